package org.dentary.result;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.kit.KitService;
import org.dentary.kit.LabelView;
import org.dentary.plan.PlanClock;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;
import org.dentary.result.outcome.OutcomeService;
import org.dentary.submission.ReceiptService;

/** Records findings one at a time; they are never changed, only corrected by another. */
@ApplicationScoped
public class FindingService {
    private static final String RESOURCE = "finding";

    private final FindingQueries queries;
    private final OutcomeService outcomes;
    private final PlanService plan;
    private final KitService kits;
    private final ReceiptService receipts;
    private final RepeatableRequests requests;
    private final CurrentAccount account;
    private final PlanClock planClock;
    private final Clock clock;
    private final EntityManager entities;

    FindingService(
            FindingQueries queries,
            OutcomeService outcomes,
            PlanService plan,
            KitService kits,
            ReceiptService receipts,
            RepeatableRequests requests,
            CurrentAccount account,
            PlanClock planClock,
            Clock clock,
            EntityManager entities) {
        this.queries = queries;
        this.outcomes = outcomes;
        this.plan = plan;
        this.kits = kits;
        this.receipts = receipts;
        this.requests = requests;
        this.account = account;
        this.planClock = planClock;
        this.clock = clock;
        this.entities = entities;
    }

    /** A finding and whether it is new. */
    record Recorded(FindingView finding, boolean fresh) {}

    /**
     * Records a finding and derives the outcomes of the animals whose tissue it names.
     *
     * @throws InvalidInput (422) with every field at fault
     * @throws RuleBroken (409) if the id holds another finding, or the laboratory's item is on another specimen
     */
    @Transactional
    Recorded put(UUID id, RecordFinding command) {
        FindingView present = queries.find(id).orElse(null);
        if (requests.compare(RESOURCE, id.toString(), command, present != null) == Seen.REPLAY) {
            return new Recorded(present, false);
        }
        plan.laboratory(command.laboratory());
        String disease = plan.method(command.method()).disease();
        List<String> codes = kits.labels("specimens", command.specimens()).stream()
                .map(LabelView::code)
                .distinct()
                .toList();
        List<FindingQueries.Specimen> specimens = queries.specimens(codes);
        check(command, codes, specimens);
        Set<String> animals = specimens.stream()
                .map(FindingQueries.Specimen::kit)
                .collect(Collectors.toCollection(LinkedHashSet::new));
        if (command.corrects() != null) {
            checkCorrection(command, codes, animals);
        }
        queries.insert(
                id, command, disease, animals.size() > 1, codes, account.get().actor(), clock.instant());
        requests.accept(RESOURCE, id.toString(), command);
        entities.flush();
        outcomes.derive(animals, command.corrects() == null ? "FINDING" : "CORRECTION");
        // After the outcomes: what a withheld finding alone says of arrival is withheld with it.
        if (command.reason() != FindingReason.NOT_RECEIVED) {
            receipts.impliedReceipt(
                    specimens.stream()
                            .flatMap(specimen -> Stream.of(specimen.code(), specimen.parent()))
                            .filter(Objects::nonNull)
                            .toList(),
                    command.laboratory(),
                    clock.instant());
        }
        return new Recorded(queries.find(id).orElseThrow(), true);
    }

    FindingView finding(UUID id) {
        return queries.find(id).orElseThrow(() -> new NotFound("FINDING_UNKNOWN", "No finding " + id + " is recorded"));
    }

    /** Findings on the tissue of an animal, oldest first. */
    public List<FindingView> ofKit(String kit) {
        return queries.ofKit(kits.kit(kit));
    }

    private void check(RecordFinding command, List<String> codes, List<FindingQueries.Specimen> specimens) {
        List<FieldProblem> faults = new ArrayList<>();
        if (command.performingLaboratory() != null
                && plan.laboratories().stream().noneMatch(one -> one.code().equals(command.performingLaboratory()))) {
            faults.add(new FieldProblem(
                    "performingLaboratory",
                    "LABORATORY_UNKNOWN",
                    "laboratory '" + command.performingLaboratory()
                            + "' is not set up; check the report, set it up, or leave it open"));
        }
        faults.addAll(ofSpecimens(command.laboratory(), codes, specimens));
        LocalDate collected = specimens.stream()
                .map(s -> LocalDate.ofInstant(s.collectedAt(), ZoneId.of(s.zone())))
                .max(LocalDate::compareTo)
                .orElse(null);
        faults.addAll(FindingRules.check(
                command.finding(),
                command.status(),
                command.stage(),
                command.reason(),
                command.testedOn(),
                command.reportedOn(),
                collected,
                planClock.today()));
        if (command.status() == FindingStatus.CORRECTED && command.corrects() == null) {
            faults.add(new FieldProblem(
                    "corrects", "REQUIRED", "a corrected finding names the one it replaces; give its id"));
        }
        if (!faults.isEmpty()) {
            throw InvalidInput.of(faults);
        }
        requireItemOfOneSpecimen(command, codes);
    }

    /** What speaks against the specimens themselves: none under a code, or never sent to the laboratory. */
    private static List<FieldProblem> ofSpecimens(
            String laboratory, List<String> codes, List<FindingQueries.Specimen> specimens) {
        List<FieldProblem> faults = new ArrayList<>();
        Set<String> known =
                specimens.stream().map(FindingQueries.Specimen::code).collect(Collectors.toSet());
        codes.stream()
                .filter(code -> !known.contains(code))
                .forEach(code -> faults.add(new FieldProblem(
                        "specimens",
                        "SPECIMEN_UNKNOWN",
                        "no specimen is recorded under " + code + "; record it at its animal first")));
        for (FindingQueries.Specimen specimen : specimens) {
            if (!Arrays.asList(specimen.laboratories().split(" ")).contains(laboratory)) {
                faults.add(new FieldProblem(
                        "laboratory",
                        "NOT_ON_ROUTE",
                        specimen.code() + " was not sent to " + laboratory + " ("
                                + (specimen.laboratories().isEmpty()
                                        ? "it is on no submission"
                                        : "it was sent to " + specimen.laboratories())
                                + "); check tube and laboratory, or add it to the submission"));
            }
        }
        return faults;
    }

    private void requireItemOfOneSpecimen(RecordFinding command, List<String> codes) {
        if (command.item() == null) {
            return;
        }
        queries.lockLaboratory(command.laboratory());
        if (queries.itemIsTaken(command.laboratory(), command.accession().trim(), command.item(), codes)) {
            throw new RuleBroken(
                    "ITEM_ON_TWO_SPECIMENS",
                    "item " + command.item() + " of accession " + command.accession() + " at " + command.laboratory()
                            + " is recorded on another specimen; check the laboratory's list");
        }
    }

    private void checkCorrection(RecordFinding command, List<String> codes, Set<String> animals) {
        FindingView earlier = queries.find(command.corrects())
                .orElseThrow(() -> InvalidInput.field(
                        "corrects", "FINDING_UNKNOWN", "no finding " + command.corrects() + " is recorded"));
        if (earlier.correctedBy() != null) {
            throw new RuleBroken(
                    "ALREADY_CORRECTED",
                    "finding " + command.corrects() + " was corrected by " + earlier.correctedBy()
                            + "; correct that one");
        }
        Set<String> before = Set.of(earlier.specimens().split(" "));
        if (!before.equals(Set.copyOf(codes))) {
            throw InvalidInput.field(
                    "specimens",
                    "CORRECTS_OTHER_TISSUE",
                    "the finding it corrects names " + earlier.specimens()
                            + "; a correction names the same tissue. A swapped label is put right at the label");
        }
    }
}
