package org.dentary.result.imports.file;

/**
 * One line of a laboratory's file as read: trimmed text, null where empty.
 *
 * @param line line of the file; a table's header is 1
 * @param specimens label codes separated by spaces
 * @param tissue what an HL7 message calls the tissue, in our word; null where nothing is said
 */
public record ImportRow(
        int line,
        String specimens,
        String accession,
        String item,
        String method,
        String stage,
        String finding,
        String status,
        String testedOn,
        String reportedOn,
        String reason,
        String measuredValue,
        String performingLaboratory,
        String corrects,
        String run,
        String tissue) {}
