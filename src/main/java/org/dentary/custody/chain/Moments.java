package org.dentary.custody.chain;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.dentary.ledger.Redacted;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.PlanSettings;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.InvalidInput;

/** When and where an act of custody happened, held against the plan's limits. */
@ApplicationScoped
public class Moments {
    private static final int LONGEST_TEXT = 2_000;

    private final CustodyQueries queries;
    private final PlanService plan;
    private final CurrentAccount current;
    private final Clock clock;

    Moments(CustodyQueries queries, PlanService plan, CurrentAccount current, Clock clock) {
        this.queries = queries;
        this.plan = plan;
        this.current = current;
        this.clock = clock;
    }

    public Instant now() {
        return clock.instant();
    }

    /** The plan's limits on a day. */
    public Limits limits(Instant at, ZoneId zone) {
        PlanSettings settings = plan.settings();
        String season = plan.seasonOn(at.atZone(zone).toLocalDate())
                .map(SeasonView::code)
                .orElse(null);
        return new Limits(
                Duration.ofHours(settings.wholeNumber(PlanSetting.CUSTODY_LATE_HOURS, season, null, null)),
                Duration.ofHours(settings.wholeNumber(PlanSetting.CUSTODY_GAP_HOURS, season, null, null)),
                Duration.ofHours(settings.wholeNumber(PlanSetting.HAND_OVER_UNACCEPTED_HOURS, season, null, null)),
                Duration.ofMinutes(settings.wholeNumber(PlanSetting.CLOCK_SKEW_MINUTES, season, null, null)),
                settings.wholeNumber(PlanSetting.DISCREPANCY_DAYS, season, null, null));
    }

    /**
     * The frame of an act of the present account.
     *
     * @param occurredAt null: now
     * @param enteredAt null: when it is received
     * @param place as typed, or null
     * @param zone of the labels, where the place has none
     * @throws InvalidInput if the times cannot be, or the act is late without a reason
     */
    public Moment moment(
            OffsetDateTime occurredAt, OffsetDateTime enteredAt, String reason, String place, ZoneId zone) {
        return moment(
                occurredAt == null ? now() : occurredAt.toInstant(),
                enteredAt == null ? null : enteredAt.toInstant(),
                reason,
                place(place),
                zone);
    }

    /** The same from plain times; enteredAt null: when it is received. */
    public Moment moment(Instant occurredAt, Instant enteredAt, String reason, Place place, ZoneId zone) {
        Limits limits = limits(occurredAt, place.zone() == null ? zone : place.zone());
        Moment moment = momentWithoutReason(occurredAt, enteredAt, reason, place, zone, limits);
        CustodyRules.requireReasonIfLate(moment.occurredAt(), moment.enteredAt(), limits.late(), reason);
        return moment;
    }

    /** The same where lateness is marked but never refused. */
    public Moment momentWithoutReason(
            Instant occurredAt, Instant enteredAt, String reason, Place place, ZoneId zone, Limits limits) {
        Instant receivedAt = now();
        Instant entered = enteredAt == null ? receivedAt : enteredAt;
        ZoneId at = place.zone() == null ? zone : place.zone();
        CustodyRules.requirePossible(occurredAt, entered, receivedAt, limits.skew());
        return new Moment(
                occurredAt,
                entered,
                receivedAt,
                at,
                current.get().actor(),
                place,
                redacted("reason", reason),
                CustodyRules.isLate(occurredAt, entered, limits.late()));
    }

    /** Free text for the ledger: only its digest enters; null for none. */
    public static Redacted redacted(String field, String text) {
        if (text == null || text.isBlank()) {
            return null;
        }
        if (text.length() > LONGEST_TEXT) {
            throw InvalidInput.field(
                    field, "TOO_LONG", field + " has " + text.length() + " characters; up to " + LONGEST_TEXT);
        }
        return Redacted.of(text.strip());
    }

    /** The place that was typed: a code of the plan, or words. */
    public Place place(String typed) {
        return typed == null || typed.isBlank()
                ? Place.NOT_SAID
                : places(List.of(typed)).get(typed);
    }

    /** The places that were typed, in one query. */
    public Map<String, Place> places(Collection<String> typed) {
        Set<String> asked = new LinkedHashSet<>();
        typed.forEach(text -> asked.add(text.strip()));
        Map<String, CustodyQueries.PlaceRow> known = asked.isEmpty() ? Map.of() : queries.places(asked);
        Map<String, Place> places = new HashMap<>();
        for (String text : typed) {
            CustodyQueries.PlaceRow row = known.get(text.strip());
            places.put(
                    text,
                    row == null
                            ? Place.inWords(redacted("place", text).text())
                            : new Place(
                                    row.code(),
                                    null,
                                    row.kind(),
                                    row.timeZone() == null ? null : ZoneId.of(row.timeZone())));
        }
        return places;
    }
}
