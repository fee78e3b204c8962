package org.dentary.result.incident;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.dentary.people.PeopleService;
import org.dentary.plan.PlanService;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.PlanSettings;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.problem.StaleVersion;
import org.dentary.platform.request.ETags;
import org.dentary.platform.state.States;
import org.dentary.platform.table.Page;
import org.dentary.result.outcome.SuspicionDerived;

/**
 * Incidents: opened by the first suspicion of a disease in a unit where it is not established, closed by people when
 * every step is settled. While one is open nothing of that disease in that unit is released. An animal whose unit is unknown
 * may be the first of any unit, so it opens one too, which becomes the unit's as soon as that is found.
 */
@ApplicationScoped
public class IncidentService {
    private static final List<String> WITHOUT_A_UNIT =
            Arrays.stream(IncidentStep.values()).map(Enum::name).toList();
    private static final List<String> KINDS = WITHOUT_A_UNIT.stream()
            .filter(kind -> !kind.equals(IncidentStep.FIND_UNIT.name()))
            .toList();

    private final IncidentQueries queries;
    private final PlanService plan;
    private final PeopleService people;
    private final CurrentAccount account;
    private final Clock clock;
    private final EntityManager entities;

    IncidentService(
            IncidentQueries queries,
            PlanService plan,
            PeopleService people,
            CurrentAccount account,
            Clock clock,
            EntityManager entities) {
        this.queries = queries;
        this.plan = plan;
        this.people = people;
        this.account = account;
        this.clock = clock;
        this.entities = entities;
    }

    @Transactional
    void whenSuspicionIsDerived(@Observes SuspicionDerived derived) {
        List<IncidentQueries.Candidate> candidates = queries.candidates(
                derived.suspicions().stream()
                        .map(SuspicionDerived.Suspicion::kit)
                        .toList(),
                derived.suspicions().stream()
                        .map(SuspicionDerived.Suspicion::disease)
                        .toList());
        PlanSettings settings = plan.settings();
        Instant now = clock.instant();
        for (IncidentQueries.Candidate animal : candidates) {
            boolean established = settings.codes(
                            PlanSetting.DISEASES_ESTABLISHED, animal.season(), animal.region(), animal.unit())
                    .contains(animal.disease());
            if (animal.open() == null && established) {
                continue;
            }
            if (animal.open() == null && (animal.unit() == null || !queries.place(animal))) {
                List<String> whom = Arrays.stream(settings.text(
                                        PlanSetting.FIRST_DETECTION_TOLD,
                                        animal.season(),
                                        animal.region(),
                                        animal.unit())
                                .split(";"))
                        .map(String::strip)
                        .filter(one -> !one.isEmpty())
                        .toList();
                queries.open(UUID.randomUUID(), animal, animal.unit() == null ? WITHOUT_A_UNIT : KINDS, whom, now);
            }
            queries.join(animal, now);
        }
    }

    /** Incidents, open ones first, then the newest; {@code after} is the id of the last one told, or null. */
    Page<IncidentView.Head> page(UUID after, int most) {
        return Page.of(queries.heads("", after, most + 1), most);
    }

    /** Every step of every incident, open incidents first, to be streamed: {@link IncidentQueries.TableRow}s. */
    Callable<Query> table() {
        return queries::table;
    }

    @Transactional
    IncidentView incident(UUID id) {
        IncidentView.Head head = queries.heads(id.toString(), null, 1).stream()
                .findFirst()
                .orElseThrow(() -> new NotFound("INCIDENT_UNKNOWN", "No incident " + id + " is recorded"));
        return new IncidentView(
                head,
                queries.animals(id),
                queries.steps(id),
                queries.tellings(id),
                queries.sameTable(id),
                queries.changes(id));
    }

    /**
     * Says where a step stands. Saying the same again changes nothing.
     *
     * @param ifMatch the step's ETag
     * @throws StaleVersion (412) where somebody else changed it since, or no If-Match came along
     */
    @Transactional
    IncidentView.Step settle(UUID id, IncidentStep kind, SettleStep step, String ifMatch) {
        IncidentView incident = incident(id);
        IncidentView.Step there = step(incident, kind);
        if (same(there, step)) {
            return there;
        }
        States.require("incident", id.toString(), incident.head().state(), "settle");
        people.person(step.owner());
        IncidentRules.problem(kind, step).ifPresent(problem -> {
            throw InvalidInput.of(List.of(problem));
        });
        if (ifMatch == null
                || !ETags.matches(ifMatch, there.version())
                || queries.settle(id, kind, step, there.version()) == 0) {
            throw new StaleVersion(
                    "STALE_VERSION",
                    "Step " + kind + " is at " + ETags.of(there.version()) + "; read it, then send that as If-Match");
        }
        entities.flush();
        return step(incident(id), kind);
    }

    /**
     * Records that somebody on the list was told.
     *
     * @param note how; and why out of order, where somebody before was not told yet
     */
    @Transactional
    IncidentView tell(UUID id, int position, Instant at, String note) {
        IncidentView incident = incident(id);
        IncidentView.Telling telling = incident.tellings().stream()
                .filter(one -> one.position() == position)
                .findFirst()
                .orElseThrow(() -> new NotFound("NOBODY_THERE", "Nobody stands at place " + position + " of the list"));
        if (telling.toldAt() != null && telling.toldAt().equals(at)) {
            return incident;
        }
        States.require("incident", id.toString(), incident.head().state(), "tell");
        if (telling.toldAt() != null) {
            throw new RuleBroken("TOLD_ALREADY", telling.whom() + " was told at " + telling.toldAt());
        }
        if (at.isAfter(clock.instant().plusSeconds(600))) {
            throw InvalidInput.field("toldAt", "IN_THE_FUTURE", "Telling lies in the past; check day and hour");
        }
        boolean early = incident.tellings().stream().anyMatch(one -> one.position() < position && one.toldAt() == null);
        if (early && (note == null || note.isBlank())) {
            throw new RuleBroken(
                    "OUT_OF_ORDER",
                    "Somebody who stands before \"" + telling.whom()
                            + "\" on the list was not told yet; tell them first, or say why not");
        }
        queries.tell(id, position, at, account.get().actor(), note);
        entities.flush();
        return incident(id);
    }

    /**
     * Closes an incident; from then on a detection in it can be released. Closing it the same way again changes nothing.
     *
     * @throws RuleBroken (409) naming every step that is open, everybody not told and what speaks against it
     */
    @Transactional
    IncidentView close(UUID id, boolean confirmed, String note) {
        IncidentView incident = incident(id);
        String as = confirmed ? "CONFIRMED" : "NOT_CONFIRMED";
        if (as.equals(incident.head().closedAs())) {
            return incident;
        }
        States.require("incident", id.toString(), incident.head().state(), "close");
        List<String> hindrances = IncidentRules.hindrances(incident, confirmed);
        if (!hindrances.isEmpty()) {
            throw new RuleBroken(
                    "NOT_SETTLED", "The incident cannot be closed so yet: " + String.join("; ", hindrances));
        }
        queries.close(id, as, note, account.get().actor(), clock.instant());
        entities.flush();
        return incident(id);
    }

    private static IncidentView.Step step(IncidentView incident, IncidentStep kind) {
        return incident.steps().stream()
                .filter(one -> one.kind().equals(kind.name()))
                .findFirst()
                .orElseThrow(() -> new NotFound("STEP_UNKNOWN", "This incident has no step " + kind));
    }

    private static boolean same(IncidentView.Step there, SettleStep step) {
        return there.version() > 0
                && step.owner().equals(there.owner())
                && java.util.Objects.equals(step.dueOn(), there.dueOn())
                && step.state().name().equals(there.state())
                && java.util.Objects.equals(step.note(), there.note());
    }
}
