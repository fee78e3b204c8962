package org.dentary.story;

import java.time.LocalDate;

/**
 * A laboratory's finding on tissue of the animal.
 *
 * @param specimens label codes it names, separated by spaces; of other animals too where several were pooled
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
        String specimens,
        boolean pool,
        boolean corrected) {}
