package org.dentary.result.imports;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.dentary.platform.problem.NotFound;
import org.dentary.result.imports.file.RowProblem;
import org.dentary.result.imports.progress.ImportProgress;
import org.dentary.result.imports.progress.ProgressService;

/**
 * What is known of laboratories' files. They are taken in by {@link ImportPreviewService} and posted by
 * {@link ImportPostingService}.
 */
@ApplicationScoped
public class ImportService {
    /** From here on others are told how far it is: a second's work or more. */
    static final int LARGE_BYTES = 200_000;

    static final int LARGE_ROWS = 2_000;

    static final int PROBLEMS_SHOWN = 1_000;

    private final ImportQueries queries;
    private final ProgressService progress;

    ImportService(ImportQueries queries, ProgressService progress) {
        this.queries = queries;
        this.progress = progress;
    }

    /** How a file is written. */
    enum Format {
        CSV,
        XLSX,
        HL7
    }

    /** Whether posting it takes long enough that others are told how far it is. */
    boolean isLarge(UUID id) {
        return require(id).rows() >= LARGE_ROWS;
    }

    /** How far a large import is; empty where it is done, and where none of that id was begun. */
    Optional<ImportProgress> progress(UUID id) {
        return progress.find(id);
    }

    /** Whether it is recorded. */
    boolean isRecorded(UUID id) {
        return queries.find(id).isPresent();
    }

    ImportView view(UUID id) {
        ImportQueries.Head head = require(id);
        boolean posting = head.rows() >= LARGE_ROWS
                && head.state().equals("PREVIEWED")
                && progress.find(id)
                        .filter(p -> p.isRunning() && p.act().equals("POSTING"))
                        .isPresent();
        ImportView view = view(head, queries.problems(id, PROBLEMS_SHOWN), queries.repeatedMessages(id, List.of()));
        return posting ? view.posting() : view;
    }

    /** Imports, newest first, without their faults. */
    List<ImportView> newest(int limit) {
        return queries.newest(limit).stream()
                .map(head -> view(head, List.of(), List.of()))
                .toList();
    }

    /** Every fault of an import, by line. */
    List<RowProblem> problems(UUID id) {
        require(id);
        return queries.problems(id, Integer.MAX_VALUE);
    }

    /** The first rows for the page, those with faults before the others. */
    List<ImportQueries.PreviewRow> rows(UUID id, int limit) {
        return queries.rows(id, limit);
    }

    /** Lines with faults that hold the file back unless they are left out. */
    List<Integer> faultyLines(UUID id) {
        return queries.faultyLines(id);
    }

    ImportQueries.Head require(UUID id) {
        return queries.find(id)
                .orElseThrow(() -> new NotFound("IMPORT_UNKNOWN", "No result import " + id + " is recorded"));
    }

    private static ImportView view(
            ImportQueries.Head head, List<RowProblem> problems, List<ImportView.RepeatedMessage> repeated) {
        return new ImportView(
                head.id(),
                head.laboratory(),
                head.format(),
                head.fileName(),
                head.state(),
                head.rows(),
                head.state().equals("POSTED") ? 0 : head.postable(),
                head.repeats(),
                head.posted(),
                problems,
                head.problems(),
                head.uploadedBy(),
                head.uploadedAt(),
                head.postedBy(),
                head.postedAt(),
                repeated);
    }
}
