package org.dentary.result;

import com.fasterxml.jackson.databind.annotation.JsonSerialize;
import java.time.Instant;
import java.time.LocalDate;
import org.dentary.platform.request.SpacedList;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/**
 * A finding as recorded.
 *
 * @param specimens label codes separated by spaces; in JSON a list
 * @param laboratory that reported it
 * @param performingLaboratory that made the test where the report names it, or null
 * @param correctedBy the finding that replaced it, or null
 */
public record FindingView(
        String id,

        @JsonSerialize(converter = SpacedList.class) @Schema(implementation = String[].class)
        String specimens,

        String method,
        String disease,
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
        Boolean pool,
        String corrects,
        String correctedBy,
        String importId,
        Integer importLine,
        String recordedBy,
        Instant recordedAt) {}
