package org.dentary.result.imports;

import io.quarkus.narayana.jta.runtime.TransactionConfiguration;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.state.States;
import org.dentary.result.imports.progress.ImportStep;
import org.dentary.result.imports.progress.ProgressService;
import org.dentary.result.outcome.OutcomeService;
import org.dentary.submission.ReceiptService;

/** Posts a previewed file, as a whole or not at all. */
@ApplicationScoped
public class ImportPostingService {
    private static final String THING = "result-import";

    private final ImportService imports;
    private final ImportQueries queries;
    private final ImportWrites writes;
    private final ImportCheckQueries checks;
    private final OutcomeService outcomes;
    private final ProgressService progress;
    private final ReceiptService receipts;
    private final CurrentAccount account;
    private final Clock clock;

    ImportPostingService(
            ImportService imports,
            ImportQueries queries,
            ImportWrites writes,
            ImportCheckQueries checks,
            OutcomeService outcomes,
            ProgressService progress,
            ReceiptService receipts,
            CurrentAccount account,
            Clock clock) {
        this.imports = imports;
        this.queries = queries;
        this.writes = writes;
        this.checks = checks;
        this.outcomes = outcomes;
        this.progress = progress;
        this.receipts = receipts;
        this.account = account;
        this.clock = clock;
    }

    /**
     * Posts what was previewed, checked again.
     *
     * @param leaveOut lines knowingly held back; they stay in the work list
     * @param otherTests whether messages whose number was posted before are accepted as messages of their own
     * @throws RuleBroken (409) if a number was posted before and that is not accepted, if rows that are not left out have faults, with them, or it was posted otherwise before
     */
    @Transactional
    @TransactionConfiguration(timeout = ProgressService.LONGEST_SECONDS)
    ImportView post(UUID id, List<Integer> leaveOut, boolean otherTests) {
        boolean large = imports.isLarge(id);
        if (large) {
            progress.begin(id, "POSTING", imports.require(id).fileName());
            progress.hold(id);
            progress.step(id, ImportStep.CHECKING, 0, 0);
        }
        queries.lock(id);
        ImportQueries.Head head = imports.require(id);
        if (head.state().equals("POSTED") && large) {
            progress.end(id);
        }
        if (head.state().equals("POSTED")) {
            ImportView posted = imports.view(id);
            boolean mine = account.get().actor().equals(head.postedBy());
            if (mine && sameLeftOut(id, leaveOut)) {
                return posted;
            }
            throw new RuleBroken(
                    "WRONG_STATE",
                    "import " + id + " is POSTED by " + head.postedBy()
                            + (mine
                                    ? " with other lines left out; enter what is missing anew"
                                    : "; nothing is left to do"));
        }
        States.require(THING, id.toString(), head.state(), "post");
        List<Integer> unknown = queries.notInFile(id, leaveOut);
        if (!unknown.isEmpty()) {
            throw InvalidInput.field(
                    "leaveOut",
                    "LINE_UNKNOWN",
                    "the file has no line " + unknown.get(0) + "; leaveOut names lines of the file, its first being 1");
        }
        queries.lockLaboratory(head.laboratory());
        checks.check(id, (done, total) -> {});
        Set<Integer> left = new TreeSet<>(leaveOut);
        List<Integer> faulty = queries.faultyLines(id).stream()
                .filter(line -> !left.contains(line))
                .toList();
        if (!faulty.isEmpty()) {
            List<FieldProblem> problems = queries.problems(id, ImportService.PROBLEMS_SHOWN).stream()
                    .filter(p -> faulty.contains(p.line()))
                    .map(p -> new FieldProblem("line " + p.line() + "." + p.field(), p.rule(), p.message()))
                    .toList();
            throw new RuleBroken(
                    "ROWS_AT_FAULT",
                    (faulty.size() == 1
                                    ? "line " + faulty.get(0) + " has a fault and is not left out"
                                    : faulty.size() + " lines have faults and are not left out (the first is line "
                                            + faulty.get(0) + ")")
                            + "; nothing was posted. Mend the file, or name what to leave out in leaveOut",
                    problems);
        }
        List<ImportView.RepeatedMessage> repeated = queries.repeatedMessages(id, List.copyOf(left));
        if (!repeated.isEmpty() && !otherTests) {
            throw repeated(repeated);
        }
        if (large) {
            progress.step(id, ImportStep.WRITING, 0, 0);
        }
        writes.hold(id, List.copyOf(left));
        int posted = writes.post(id, account.get().actor(), clock.instant());
        writes.close(
                id,
                account.get().actor(),
                clock.instant(),
                posted,
                List.copyOf(left),
                repeated.stream().map(ImportView.RepeatedMessage::message).toList());
        outcomes.derive(
                queries.kits(id),
                "FINDING",
                large ? (done, total) -> progress.step(id, ImportStep.OUTCOMES, done, total) : (done, total) -> {});
        // After the outcomes: what a withheld finding alone says of arrival is withheld with it.
        receipts.impliedReceipt(queries.codes(id), head.laboratory(), clock.instant());
        if (large) {
            progress.end(id);
        }
        return imports.view(id);
    }

    private static RuleBroken repeated(List<ImportView.RepeatedMessage> repeated) {
        return new RuleBroken(
                "MESSAGE_REPEATED",
                (repeated.size() == 1
                                ? "message " + repeated.get(0).message() + " has a number"
                                : repeated.size() + " messages (the first is "
                                        + repeated.get(0).message() + ") have numbers")
                        + " that was posted before, and tells of other tests; a laboratory gives each message a number of its"
                        + " own (MSH-10). Nothing was posted. Ask the laboratory; then accept the messages in otherTests, or"
                        + " leave their lines out",
                repeated.stream()
                        .map(one -> new FieldProblem(
                                "message " + one.message(),
                                "MESSAGE_REPEATED",
                                one.lines() + " lines; the number was posted " + one.postedAt() + " by import "
                                        + one.before()))
                        .toList());
    }

    private boolean sameLeftOut(UUID id, List<Integer> leaveOut) {
        String asked = new TreeSet<>(leaveOut).stream().map(String::valueOf).collect(Collectors.joining(","));
        return asked.equals(queries.leftOut(id));
    }
}
