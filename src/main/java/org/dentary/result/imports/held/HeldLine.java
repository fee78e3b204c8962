package org.dentary.result.imports.held;

import java.time.Instant;
import java.util.List;
import org.dentary.platform.table.CsvTable;

/**
 * A line of a laboratory's file that was left out when the file was posted.
 *
 * @param resultImport id of the file's import
 * @param line of the file, the first being 1
 * @param specimens codes as read, with blanks between
 * @param problems what was wrong with it in words, one a line; null where it was left out by choice
 * @param state {@code WAITS}; {@code REPORTED} since, of the same tissue, method and stage; {@code SETTLED} by a person
 * @param note what came of it, where a person settled it
 */
public record HeldLine(
        String resultImport,
        Integer line,
        String fileName,
        String laboratory,
        String specimens,
        String accession,
        String method,
        String stage,
        String finding,
        String problems,
        String heldBy,
        Instant heldAt,
        String state,
        String settledBy,
        Instant settledAt,
        String note) {
    static final List<String> COLUMNS = List.of(
            "result_import",
            "line",
            "file",
            "laboratory",
            "specimen_code",
            "accession_number",
            "test_method",
            "stage",
            "finding",
            "problems",
            "held_by",
            "held_at",
            "state",
            "settled_by",
            "settled_at",
            "note");

    /** The problems one by one. */
    public List<String> each() {
        return problems == null ? List.of() : problems.lines().toList();
    }

    void write(CsvTable csv) {
        csv.row(
                resultImport,
                line,
                fileName,
                laboratory,
                specimens,
                accession,
                method,
                stage,
                finding,
                problems,
                heldBy,
                heldAt,
                state,
                settledBy,
                settledAt,
                note);
    }
}
