package org.dentary.prevalence.cut;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;

/** Makes data cuts, marks them superseded, and says what changed between two. */
@ApplicationScoped
public class DataCutService {
    private static final String RESOURCE = "data cut";

    private final DataCutQueries queries;
    private final CutChangeQueries differences;
    private final CutContextQueries context;
    private final PlanService plan;
    private final RepeatableRequests requests;
    private final CurrentAccount account;
    private final Clock clock;
    private final EntityManager entities;

    DataCutService(
            DataCutQueries queries,
            CutChangeQueries differences,
            CutContextQueries context,
            PlanService plan,
            RepeatableRequests requests,
            CurrentAccount account,
            Clock clock,
            EntityManager entities) {
        this.queries = queries;
        this.differences = differences;
        this.context = context;
        this.plan = plan;
        this.requests = requests;
        this.account = account;
        this.clock = clock;
        this.entities = entities;
    }

    /** What was done, and whether it is new. */
    record Made(DataCutView cut, boolean fresh) {}

    /**
     * Makes a cut of the season as it is now, or with {@code superseded} says why a cut should no longer be used.
     *
     * @throws RuleBroken (409) if the id was used for another cut, or the season has a cut of that name
     */
    @Transactional
    Made put(UUID id, MakeDataCut command, String ifMatch) {
        plan.season(command.season());
        DataCutView present = queries.find(id).orElse(null);
        Seen seen =
                requests.compare(RESOURCE, id.toString(), command, ifMatch, present == null ? null : present.version());
        if (seen == Seen.REPLAY) {
            return new Made(present, false);
        }
        if (seen == Seen.NEW) {
            if (queries.all(command.season()).stream()
                    .anyMatch(cut -> cut.name().equals(command.name()))) {
                throw new RuleBroken(
                        "CUT_NAME_TAKEN",
                        "season " + command.season() + " already has a cut named '" + command.name()
                                + "'; take another name");
            }
            int lines = queries.insert(
                    id, command.season(), command.name(), account.get().actor(), clock.instant());
            queries.setContext(id, lines, context.of(id, command.season()));
        } else {
            if (!present.season().equals(command.season()) || !present.name().equals(command.name())) {
                throw new RuleBroken(
                        "CUT_IS_FIXED",
                        "a cut's season and name do not change; mark it superseded with a reason and make another");
            }
            if (command.superseded() == null) {
                throw InvalidInput.field(
                        "superseded", "REQUIRED", "say in superseded why the cut should no longer be used");
            }
            queries.supersede(id, command.superseded(), account.get().actor(), clock.instant());
        }
        requests.accept(RESOURCE, id.toString(), command);
        entities.flush();
        return new Made(queries.require(id), seen == Seen.NEW);
    }

    /** The cut of that id. */
    public DataCutView require(UUID id) {
        return queries.require(id);
    }

    /** Cuts oldest first; of all seasons when {@code season} is null. */
    public List<DataCutView> all(String season) {
        return queries.all(season);
    }

    /**
     * What differs between two cuts of one season.
     *
     * @throws InvalidInput if they are of two seasons
     */
    DataCutChanges changes(UUID from, UUID to) {
        DataCutView a = queries.require(from);
        DataCutView b = queries.require(to);
        if (!a.season().equals(b.season())) {
            throw InvalidInput.field(
                    "to",
                    "CUT_OF_ANOTHER_SEASON",
                    "cut '" + b.name() + "' is of season " + b.season() + " and '" + a.name() + "' of " + a.season()
                            + "; compare cuts of one season");
        }
        List<DataCutChange> changes = differences.changes(from, to);
        Map<ChangeKind, Long> counts = changes.stream()
                .collect(Collectors.groupingBy(
                        DataCutChange::kind, () -> new EnumMap<>(ChangeKind.class), Collectors.counting()));
        return new DataCutChanges(a, b, counts, sentence(counts), changes);
    }

    private static String sentence(Map<ChangeKind, Long> counts) {
        return counts.isEmpty()
                ? "Nothing changed"
                : counts.entrySet().stream()
                        .map(kind -> kind.getKey().told(kind.getValue()))
                        .collect(Collectors.joining(", "));
    }
}
