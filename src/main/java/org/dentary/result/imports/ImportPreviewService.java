package org.dentary.result.imports;

import io.quarkus.narayana.jta.runtime.TransactionConfiguration;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.util.HexFormat;
import java.util.UUID;
import org.dentary.plan.PlanClock;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.result.imports.file.Hl7Reader;
import org.dentary.result.imports.file.ImportFile;
import org.dentary.result.imports.file.RowRules;
import org.dentary.result.imports.file.TableReader;
import org.dentary.result.imports.file.WorkbookReader;
import org.dentary.result.imports.progress.ImportStep;
import org.dentary.result.imports.progress.ProgressService;
import org.dentary.result.mapping.CodeMaps;
import org.dentary.result.mapping.ColumnMap;
import org.dentary.result.mapping.ColumnMaps;

/** Takes a laboratory's file in and holds it against what is recorded; nothing of it is posted by that. */
@ApplicationScoped
public class ImportPreviewService {
    private final ImportService imports;
    private final ImportQueries queries;
    private final ImportWrites writes;
    private final ImportCheckQueries checks;
    private final ProgressService progress;
    private final ColumnMaps maps;
    private final CodeMaps codes;
    private final PlanService plan;
    private final CurrentAccount account;
    private final PlanClock planClock;
    private final Clock clock;

    ImportPreviewService(
            ImportService imports,
            ImportQueries queries,
            ImportWrites writes,
            ImportCheckQueries checks,
            ProgressService progress,
            ColumnMaps maps,
            CodeMaps codes,
            PlanService plan,
            CurrentAccount account,
            PlanClock planClock,
            Clock clock) {
        this.imports = imports;
        this.queries = queries;
        this.writes = writes;
        this.checks = checks;
        this.progress = progress;
        this.maps = maps;
        this.codes = codes;
        this.plan = plan;
        this.account = account;
        this.planClock = planClock;
        this.clock = clock;
    }

    /** An import and whether it is new. */
    record Done(ImportView view, boolean fresh) {}

    /**
     * Reads and checks a file without posting anything.
     *
     * @throws InvalidInput if the file cannot be read at all
     * @throws RuleBroken (409) if the id was used for another file
     */
    @Transactional
    @TransactionConfiguration(timeout = ProgressService.LONGEST_SECONDS)
    Done preview(UUID id, String laboratory, ImportService.Format format, String fileName, byte[] file) {
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
        boolean large = file.length >= ImportService.LARGE_BYTES;
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
            return new Done(imports.view(id), false);
        }
        ColumnMaps.Edition edition = maps.inForce(laboratory).orElse(null);
        ColumnMap map = edition == null ? null : edition.map();
        ImportFile read = switch (format) {
            case CSV -> TableReader.csv(file, map);
            case XLSX -> WorkbookReader.read(file, map);
            case HL7 -> Hl7Reader.read(file, codes.of(laboratory), plan.laboratories(), planClock.today());
        };
        if (read.rows().isEmpty()) {
            throw new InvalidInput("NO_ROWS", "The file has a header and no rows; nothing was stored");
        }
        ImportFile checked = RowRules.check(read, planClock.today());
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
        return new Done(imports.view(id), true);
    }

    private static String digest(byte[] file) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(file));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("SHA-256 is required of every Java platform", e);
        }
    }
}
