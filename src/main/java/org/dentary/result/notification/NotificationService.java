package org.dentary.result.notification;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.io.OutputStream;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.dentary.kit.KitService;
import org.dentary.plan.PlanService;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.PlanSettings;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.database.Snapshot;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;
import org.dentary.platform.table.CsvTable;
import org.dentary.platform.table.Page;

/** The work list of who is to be told what, and every try. An outcome that was revised after it was told is told again. */
@ApplicationScoped
public class NotificationService {
    private static final String RESOURCE = "notification-attempt";
    private static final List<String> COLUMNS = List.of(
            "kit",
            "disease",
            "outcome",
            "state",
            "how",
            "contactKept",
            "season",
            "station",
            "unit",
            "diedOn",
            "releasedAt",
            "dueBy",
            "overdue",
            "attempts",
            "lastAttemptAt",
            "lastResult",
            "toldBefore");

    private final NotificationQueries queries;
    private final KitService kits;
    private final PlanService plan;
    private final RepeatableRequests requests;
    private final CurrentAccount account;
    private final Snapshot snapshot;
    private final Clock clock;
    private final EntityManager entities;

    NotificationService(
            NotificationQueries queries,
            KitService kits,
            PlanService plan,
            RepeatableRequests requests,
            CurrentAccount account,
            Snapshot snapshot,
            Clock clock,
            EntityManager entities) {
        this.queries = queries;
        this.kits = kits;
        this.plan = plan;
        this.requests = requests;
        this.account = account;
        this.snapshot = snapshot;
        this.clock = clock;
        this.entities = entities;
    }

    /**
     * A page of the work list.
     *
     * @param next where the next page begins, or null
     */
    public record Items(List<NotificationItem> items, String next) {}

    /** One item with all its tries, oldest first. */
    public record Told(NotificationItem item, List<AttemptView> attempts, String say) {}

    /** An attempt's item afterwards, and whether the attempt is new. */
    record Recorded(Told told, boolean fresh) {}

    /** Detections first, then what was told otherwise before, then by day of death. */
    Items page(NotificationFilter filter, String after, int limit) {
        Page<NotificationQueries.Row> page = Page.of(queries.page(filter, "", cursor(after), limit + 1), limit);
        PlanSettings settings = plan.settings();
        return new Items(page.items().stream().map(row -> item(row, settings)).toList(), page.next(row -> cursor(row)));
    }

    /** How many are in which state. */
    List<NotificationQueries.Count> counts(String season) {
        return queries.counts(season == null ? "" : season);
    }

    /** How much is to be told, and since when. */
    public NotificationQueries.Waiting waiting() {
        return queries.waiting();
    }

    /** Writes the whole list as CSV, streamed: the list is put in order once. */
    @ActivateRequestContext
    void write(NotificationFilter filter, OutputStream out) {
        PlanSettings settings = plan.settings();
        try (CsvTable table = CsvTable.on(out, COLUMNS)) {
            snapshot.<NotificationQueries.Row>stream(() -> queries.all(filter), row -> row(table, item(row, settings)));
        }
    }

    /**
     * One animal's item with its tries.
     *
     * @throws NotFound where nothing is released of it, or nobody is to be told
     */
    public Told told(String typed, String disease) {
        String kit = kits.kit(typed);
        NotificationQueries.Row row =
                queries.page(new NotificationFilter("", "", disease), kit, NotificationQueries.Cursor.START, 1).stream()
                        .findFirst()
                        .orElseThrow(() -> new NotFound(
                                "NOTHING_TO_TELL",
                                "Nothing is released of " + kit + " for " + disease
                                        + ", or nobody left a contact; until then there is nothing to tell"));
        NotificationItem item = item(row, plan.settings());
        return new Told(
                item, queries.attempts(kit, disease), NotificationRules.say(item.outcome(), item.diseaseName()));
    }

    /**
     * Records a try.
     *
     * @throws RuleBroken (409) where the released outcome is another by now, labels are in doubt, or the corrected entry
     *     was corrected before
     * @throws InvalidInput (422) where the result cannot come of the channel, or the time lies ahead
     */
    @Transactional
    Recorded record(String typed, String disease, UUID id, RecordAttempt attempt) {
        String kit = kits.kit(typed);
        String key = kit + " " + disease + " " + id;
        boolean present = queries.ofAttempt(id).isPresent();
        if (requests.compare(RESOURCE, key, attempt, present) == Seen.REPLAY) {
            return new Recorded(told(kit, disease), false);
        }
        NotificationItem item = told(kit, disease).item();
        check(item, attempt);
        queries.insert(
                id,
                kit,
                disease,
                attempt,
                NotificationRules.closes(item.outcome(), attempt.channel(), attempt.result()),
                account.get().actor(),
                clock.instant());
        requests.accept(RESOURCE, key, attempt);
        entities.flush();
        return new Recorded(told(kit, disease), true);
    }

    private void check(NotificationItem item, RecordAttempt attempt) {
        if (item.state().equals("HELD")) {
            throw new RuleBroken(
                    "LABELS_IN_DOUBT",
                    "A label of kit " + item.kit() + " is in doubt; nobody is told anything until that is settled");
        }
        if (!item.outcome().equals(attempt.outcome())) {
            throw new RuleBroken(
                    "OUTCOME_CHANGED",
                    "What is released of " + item.kit() + " is " + NotificationRules.words(item.outcome())
                            + " now, not " + NotificationRules.words(attempt.outcome())
                            + "; read it again and tell that");
        }
        if (!NotificationRules.fits(attempt.channel(), attempt.result())) {
            throw InvalidInput.field(
                    "result",
                    "NOT_OF_CHANNEL",
                    NotificationRules.words(attempt.result().name()) + " cannot come of "
                            + NotificationRules.words(attempt.channel().name())
                            + "; a letter or message is sent or returned, a call reaches or is not answered");
        }
        Duration skew = Duration.ofMinutes(
                plan.settings().wholeNumber(PlanSetting.CLOCK_SKEW_MINUTES, item.season(), null, null));
        if (attempt.at().toInstant().isAfter(clock.instant().plus(skew))) {
            throw InvalidInput.field("at", "IN_THE_FUTURE", "A try lies in the past; check day and hour");
        }
        if (attempt.corrects() != null) {
            AttemptView earlier = queries.attempts(item.kit(), item.disease()).stream()
                    .filter(one -> one.id().equals(attempt.corrects()))
                    .findFirst()
                    .orElseThrow(() -> InvalidInput.field(
                            "corrects", "ATTEMPT_UNKNOWN", "no try " + attempt.corrects() + " is recorded here"));
            if (earlier.correctedBy() != null) {
                throw new RuleBroken(
                        "ALREADY_CORRECTED",
                        "That entry was replaced by " + earlier.correctedBy() + "; correct that one");
            }
        }
    }

    private NotificationItem item(NotificationQueries.Row row, PlanSettings settings) {
        Instant dueBy = row.place() < 3
                ? NotificationRules.dueBy(
                        row.outcome(),
                        row.releasedAt(),
                        settings.wholeNumber(PlanSetting.DETECTION_TOLD_HOURS, row.season(), null, row.unit()),
                        settings.wholeNumber(PlanSetting.OUTCOME_TOLD_DAYS, row.season(), null, row.unit()))
                : null;
        return new NotificationItem(
                row.kit(),
                row.disease(),
                row.diseaseName(),
                row.outcome(),
                row.state(),
                NotificationRules.how(row.outcome()),
                row.contactKept(),
                row.season(),
                row.station(),
                row.timeZone(),
                row.unit(),
                row.diedOn(),
                row.releasedAt(),
                dueBy,
                dueBy != null && dueBy.isBefore(clock.instant()),
                row.attempts(),
                row.lastAt(),
                row.lastResult(),
                row.told());
    }

    private static void row(CsvTable table, NotificationItem item) {
        table.row(
                item.kit(),
                item.disease(),
                item.outcome(),
                item.state(),
                item.how(),
                item.contactKept(),
                item.season(),
                item.station(),
                item.unit(),
                item.diedOn(),
                item.releasedAt(),
                item.dueBy(),
                item.overdue(),
                item.attempts(),
                item.lastAttemptAt(),
                item.lastResult(),
                item.toldBefore());
    }

    private static NotificationQueries.Cursor cursorOf(NotificationQueries.Row row) {
        return new NotificationQueries.Cursor(
                row.place(),
                row.diedOn() == null ? NotificationQueries.Cursor.NEVER : row.diedOn(),
                row.kit(),
                row.disease());
    }

    private static String cursor(NotificationQueries.Row row) {
        NotificationQueries.Cursor at = cursorOf(row);
        return at.place() + "." + at.died() + "." + at.kit() + "." + at.disease();
    }

    private static NotificationQueries.Cursor cursor(String after) {
        if (after == null || after.isBlank()) {
            return NotificationQueries.Cursor.START;
        }
        String[] parts = after.split("\\.", 4);
        try {
            return new NotificationQueries.Cursor(
                    Integer.parseInt(parts[0]), LocalDate.parse(parts[1]), parts[2], parts[3]);
        } catch (RuntimeException e) {
            throw InvalidInput.field(
                    "after", "NOT_A_CURSOR", "'" + after + "' is no page; follow the link of the list");
        }
    }
}
