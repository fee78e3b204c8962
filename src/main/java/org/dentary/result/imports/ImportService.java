package org.dentary.result.imports;

import io.quarkus.narayana.jta.runtime.TransactionConfiguration;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.state.States;
import org.dentary.result.outcome.OutcomeService;
import org.dentary.submission.ReceiptService;

/** Takes in a laboratory's file: previewed first, then posted as a whole or not at all. */
@ApplicationScoped
public class ImportService {
    /** A hundred thousand rows on a slow machine. */
    static final int LONGEST_SECONDS = 1800;

    /** From here on others are told how far it is: a second's work or more. */
    static final int LARGE_BYTES = 200_000;

    static final int LARGE_ROWS = 2_000;

    private static final String THING = "result-import";
    private static final int PROBLEMS_SHOWN = 1_000;

    private final ImportQueries queries;
    private final ImportWrites writes;
    private final ImportCheckQueries checks;
    private final OutcomeService outcomes;
    private final ProgressService progress;
    private final ReceiptService receipts;
    private final ColumnMaps maps;
    private final CodeMaps codes;
    private final PlanService plan;
    private final CurrentAccount account;
    private final Clock clock;

    ImportService(
            ImportQueries queries,
            ImportWrites writes,
            ImportCheckQueries checks,
            OutcomeService outcomes,
            ProgressService progress,
            ReceiptService receipts,
            ColumnMaps maps,
            CodeMaps codes,
            PlanService plan,
            CurrentAccount account,
            Clock clock) {
        this.queries = queries;
        this.writes = writes;
        this.checks = checks;
        this.outcomes = outcomes;
        this.progress = progress;
        this.receipts = receipts;
        this.maps = maps;
        this.codes = codes;
        this.plan = plan;
        this.account = account;
        this.clock = clock;
    }

    /** An import and whether it is new. */
    record Done(ImportView view, boolean fresh) {}

    /** How a file is written. */
    enum Format {
        CSV,
        XLSX,
        HL7
    }

    /**
     * Reads and checks a file without posting anything.
     *
     * @throws InvalidInput if the file cannot be read at all
     * @throws RuleBroken (409) if the id was used for another file
     */
    @Transactional
    @TransactionConfiguration(timeout = LONGEST_SECONDS)
    Done preview(UUID id, String laboratory, Format format, String fileName, byte[] file) {
        if (laboratory == null || laboratory.isBlank()) {
            throw InvalidInput.field(
                    "laboratory",
                    "REQUIRED",
                    "laboratory is missing: whose file is it? /api/v1/laboratories lists them");
        }
        plan.laboratory(laboratory);
        if (file == null || file.length == 0) {
            throw new InvalidInput("FILE_EMPTY", "The file is empty; nothing was stored");
        }
        boolean large = file.length >= LARGE_BYTES;
        if (large) {
            progress.begin(id, "PREVIEW", fileName);
            progress.hold(id);
            progress.step(id, ImportStep.READING, 0, 0);
        }
        String digest = digest(file);
        ImportQueries.Head present = queries.find(id).orElse(null);
        if (present != null) {
            if (!present.digest().equals(digest) || !present.laboratory().equals(laboratory)) {
                throw new RuleBroken(
                        "ALREADY_RECORDED",
                        "import " + id + " holds another file; send this one under an id of its own");
            }
            if (large) {
                progress.end(id);
            }
            return new Done(view(id), false);
        }
        ColumnMaps.Edition edition = maps.inForce(laboratory).orElse(null);
        ColumnMap map = edition == null ? null : edition.map();
        ImportFile read = switch (format) {
            case CSV -> TableReader.csv(file, map);
            case XLSX -> TableReader.xlsx(file, map);
            case HL7 -> Hl7Reader.read(file, codes.of(laboratory), plan.laboratories(), today());
        };
        if (read.rows().isEmpty()) {
            throw new InvalidInput("NO_ROWS", "The file has a header and no rows; nothing was stored");
        }
        ImportFile checked = RowRules.check(read, today());
        writes.insert(
                id,
                laboratory,
                format.name(),
                digest,
                fileName,
                checked.rows().size(),
                read.mapped() ? edition.edition() : null,
                account.get().actor(),
                clock.instant());
        writes.rows(
                id,
                checked.rows(),
                large ? (done, total) -> progress.step(id, ImportStep.STORING, done, total) : (done, total) -> {});
        writes.problems(id, checked.problems());
        checks.check(
                id, large ? (done, total) -> progress.step(id, ImportStep.CHECKING, done, total) : (done, total) -> {});
        if (large) {
            progress.end(id);
        }
        return new Done(view(id), true);
    }

    /**
     * Posts what was previewed, checked again.
     *
     * @param leaveOut lines knowingly held back; they stay in the work list
     * @throws RuleBroken (409) if rows that are not left out have faults, with them, or it was posted otherwise before
     */
    @Transactional
    @TransactionConfiguration(timeout = LONGEST_SECONDS)
    ImportView post(UUID id, List<Integer> leaveOut) {
        boolean large = isLarge(id);
        if (large) {
            progress.begin(id, "POSTING", require(id).fileName());
            progress.hold(id);
            progress.step(id, ImportStep.CHECKING, 0, 0);
        }
        queries.lock(id);
        ImportQueries.Head head = require(id);
        if (head.state().equals("POSTED") && large) {
            progress.end(id);
        }
        if (head.state().equals("POSTED")) {
            ImportView posted = view(id);
            if (sameLeftOut(id, leaveOut)) {
                return posted;
            }
            throw new RuleBroken(
                    "WRONG_STATE", "import " + id + " is POSTED with other lines left out; enter what is missing anew");
        }
        States.require(THING, id.toString(), head.state(), "post");
        List<Integer> unknown = queries.notInFile(id, leaveOut);
        if (!unknown.isEmpty()) {
            throw InvalidInput.field(
                    "leaveOut",
                    "LINE_UNKNOWN",
                    "the file has no line " + unknown.get(0) + "; leaveOut names lines of the file, its first being 1");
        }
        checks.check(id, (done, total) -> {});
        Set<Integer> left = new TreeSet<>(leaveOut);
        List<Integer> faulty = queries.faultyLines(id).stream()
                .filter(line -> !left.contains(line))
                .toList();
        if (!faulty.isEmpty()) {
            List<FieldProblem> problems = queries.problems(id, PROBLEMS_SHOWN).stream()
                    .filter(p -> faulty.contains(p.line()))
                    .map(p -> new FieldProblem("line " + p.line() + "." + p.field(), p.rule(), p.message()))
                    .toList();
            throw new RuleBroken(
                    "ROWS_AT_FAULT",
                    faulty.size() + " lines have faults and are not left out (the first is line " + faulty.get(0)
                            + "); nothing was posted. Mend the file, or name the lines in leaveOut",
                    problems);
        }
        if (large) {
            progress.step(id, ImportStep.WRITING, 0, 0);
        }
        writes.hold(id, List.copyOf(left));
        int posted = writes.post(id, account.get().actor(), clock.instant());
        writes.close(id, account.get().actor(), clock.instant(), posted, List.copyOf(left));
        receipts.impliedReceipt(queries.codes(id), head.laboratory(), clock.instant());
        outcomes.derive(
                queries.kits(id),
                "FINDING",
                large ? (done, total) -> progress.step(id, ImportStep.OUTCOMES, done, total) : (done, total) -> {});
        if (large) {
            progress.end(id);
        }
        return view(id);
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

    private LocalDate today() {
        return LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
    }

    private boolean sameLeftOut(UUID id, List<Integer> leaveOut) {
        String asked = new TreeSet<>(leaveOut).stream().map(String::valueOf).collect(Collectors.joining(","));
        return asked.equals(queries.leftOut(id));
    }

    ImportView view(UUID id) {
        ImportQueries.Head head = require(id);
        boolean posting = head.rows() >= LARGE_ROWS
                && head.state().equals("PREVIEWED")
                && progress.find(id)
                        .filter(p -> p.isRunning() && p.act().equals("POSTING"))
                        .isPresent();
        ImportView view = view(head, queries.problems(id, PROBLEMS_SHOWN), queries.problemCount(id));
        return posting ? view.posting() : view;
    }

    /** Imports, newest first, without their faults. */
    List<ImportView> newest(int limit) {
        return queries.newest(limit).stream()
                .map(head -> view(head, List.of(), queries.problemCount(UUID.fromString(head.id()))))
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

    private ImportQueries.Head require(UUID id) {
        return queries.find(id)
                .orElseThrow(() -> new NotFound("IMPORT_UNKNOWN", "No result import " + id + " is recorded"));
    }

    private static ImportView view(ImportQueries.Head head, List<RowProblem> problems, int count) {
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
                count,
                head.uploadedBy(),
                head.uploadedAt(),
                head.postedBy(),
                head.postedAt());
    }

    private static String digest(byte[] file) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(file));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("SHA-256 is required of every Java platform", e);
        }
    }
}
