package org.dentary.story;

import com.fasterxml.jackson.databind.annotation.JsonSerialize;
import java.time.LocalDate;
import org.dentary.platform.request.SpacedList;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/**
 * A laboratory's finding on tissue of the animal.
 *
 * @param specimens label codes it names, separated by spaces, in JSON a list; of other animals too where several were pooled
 * @param corrected whether a later finding corrects it
 */
public record FindingRow(
        String id,
        String disease,
        String method,
        String stage,
        String finding,
        String status,
        String laboratory,
        String performingLaboratory,
        String accession,
        String item,
        LocalDate testedOn,
        LocalDate reportedOn,
        String reason,
        String measuredValue,

        @JsonSerialize(converter = SpacedList.class) @Schema(implementation = String[].class)
        String specimens,

        boolean pool,
        boolean corrected) {}
