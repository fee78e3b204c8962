package org.dentary.result.notification;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Reads who is to be told what, from released outcomes and tries alone. */
@ApplicationScoped
public class NotificationQueries {
    /**
     * The last try that closed something, or that undid it by coming back, decides. Of an animal whose label is in doubt
     * nothing is told, under none of its kits. Who was told is told again, also that no tissue was its own after all.
     */
    private static final String STANDING = """
            with standing as (
              select l.kit, l.disease, case when u.kit is null then l.outcome else 'NOT_ATTRIBUTABLE' end as outcome,
                     doubt.kit is not null and u.kit is null as in_doubt, u.settled_at, coalesce(l.season, '') as season, l.station,
                     coalesce(l.unit, 'UNKNOWN') as unit, l.died_on, c.kit is not null as contact_kept, last.closes,
                     last.outcome as told, last.result as last_closing
                from line l
                left join vault.contact c on c.kit = l.kit and c.names_somebody
                left join animal doubt on doubt.kit = l.kit and doubt.not_attributable
                left join unidentified_kit u on u.kit = doubt.kit
                left join lateral (
                  select t.closes, t.outcome, t.result from notification_attempt t
                   where t.kit = l.kit and t.disease = l.disease and (t.closes or t.result = 'RETURNED')
                     and not exists (select 1 from notification_attempt r where r.corrects = t.id)
                   order by t.at desc, t.recorded_at desc limit 1) last on true
               where l.closed_at is null and l.exclusion in ('', 'DUPLICATE', 'NOT_ATTRIBUTABLE')
                 and (l.outcome <> 'PENDING' or u.kit is not null)
                 and (l.has_specimen or l.kit in (select t.kit from notification_attempt t where t.closes))
                 and (l.has_specimen or last.closes)
                 and (c.kit is not null or l.outcome = 'DETECTED' or last.closes)),
            item as (
              select s.*, case when s.in_doubt then 'HELD'
                               when s.closes and s.told = s.outcome and s.last_closing in ('NOT_WISHED', 'UNREACHABLE')
                                 then 'CLOSED'
                               when s.closes and s.told = s.outcome then 'TOLD'
                               when s.closes then 'TELL_AGAIN'
                               when not s.contact_kept then 'NO_CONTACT'
                               else 'DUE' end as state from standing s),
            ranked as (
              select i.*, case when i.state in ('DUE', 'TELL_AGAIN', 'NO_CONTACT') and i.outcome = 'DETECTED' then 0
                               when i.state = 'TELL_AGAIN' then 1 when i.state in ('DUE', 'NO_CONTACT') then 2
                               when i.state = 'HELD' then 3 else 4 end as place,
                     coalesce(i.died_on, date '9999-12-31') as died from item i)
            """;

    private static final String PAGE = STANDING + """
            , page as (
              select * from ranked
               where (:state = '' or state = :state or (:state = 'OPEN' and place < 3))
                 and (:season = '' or season = :season) and (:disease = '' or disease = :disease)
                 and (:kit = '' or kit = :kit)
                 and (place, died, kit, disease) > (:place, cast(:died as date), :afterKit, :afterDisease)
               order by place, died, kit, disease limit cast(:limit as int))
            select p.kit, p.disease, d.name as disease_name, p.outcome, p.state, p.contact_kept, p.season, p.station,
                   s.time_zone, p.unit, p.died_on, p.place,
                   coalesce(p.settled_at,
                     (select min(x.opened_at) from line x where x.kit = p.kit and x.disease = p.disease
                      and x.id > coalesce((select max(y.id) from line y where y.kit = p.kit and y.disease = p.disease
                                              and y.outcome <> p.outcome), 0))) as released_at,
                   a.attempts, a.last_at, a.last_result, p.told
              from page p join disease d on d.code = p.disease join station s on s.code = p.station
              left join lateral (
                select count(*) as attempts, max(t.at) as last_at,
                       (array_agg(t.result order by t.at desc, t.recorded_at desc))[1] as last_result
                  from notification_attempt t where t.kit = p.kit and t.disease = p.disease
                   and not exists (select 1 from notification_attempt r where r.corrects = t.id)) a on true
             order by p.place, p.died, p.kit, p.disease
            """;
    private static final String COUNTS = STANDING + """
            select state, count(*) from ranked where (:season = '' or season = :season) group by state order by min(place), state
            """;
    private static final String WAITING = STANDING + """
            , waiting as (
              select r.outcome, s.time_zone,
                     coalesce(r.settled_at,
                       (select min(x.opened_at) from line x where x.kit = r.kit and x.disease = r.disease
                        and x.id > coalesce((select max(y.id) from line y where y.kit = r.kit and y.disease = r.disease
                                                and y.outcome <> r.outcome), 0))) as since
                from ranked r join station s on s.code = r.station where r.place < 3)
            select count(*), count(*) filter (where outcome = 'DETECTED'), min(since),
                   coalesce((array_agg(time_zone order by since))[1], 'UTC') from waiting
            """;
    /** While a label is in doubt nothing is told, in the words of what is not finished. */
    private static final String OUTCOMES = """
            select l.kit, l.disease, d.name as disease_name,
                   case when u.kit is not null then 'NOT_ATTRIBUTABLE' when a.not_attributable then 'PENDING'
                        else l.outcome end as outcome, l.station, s.name as station_name, l.died_on,
                   l.species, p.name as species_name,
                   coalesce((select string_agg(i.value, ', ' order by i.value) from animal_identifier i
                              where i.kit = l.kit and i.type = 'REGISTRATION'), '') as registration
              from line l join disease d on d.code = l.disease join station s on s.code = l.station
              join species p on p.code = l.species join animal a on a.kit = l.kit
              left join unidentified_kit u on u.kit = l.kit
             where l.kit in (:kits) and l.closed_at is null and l.exclusion <> 'ENTERED_IN_ERROR'
             order by l.died_on desc nulls last, l.kit, d.position, d.code
            """;

    private static final String ATTEMPTS = """
            select t.id, t.outcome, t.channel, t.result, t.closes, t.at, t.note, t.corrects,
                   (select r.id from notification_attempt r where r.corrects = t.id) as corrected_by, t.by_actor,
                   t.recorded_at
              from notification_attempt t where t.kit = :kit and t.disease = :disease order by t.at, t.recorded_at
            """;
    private static final String OF_ATTEMPT = "select kit, disease from notification_attempt where id = :id";
    private static final String INSERT = """
            insert into notification_attempt (id, kit, disease, outcome, channel, result, closes, at, note, corrects, by_actor,
                   recorded_at)
            values (:id, :kit, :disease, :outcome, :channel, :result, :closes, :at, cast(:note as text),
                    cast(:corrects as uuid), :by, :now)
            """;

    private final EntityManager entities;

    NotificationQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** A row of the work list before the plan's days are laid over it. */
    record Row(
            String kit,
            String disease,
            String diseaseName,
            String outcome,
            String state,
            Boolean contactKept,
            String season,
            String station,
            String timeZone,
            String unit,
            LocalDate diedOn,
            Integer place,
            Instant releasedAt,
            Long attempts,
            Instant lastAt,
            String lastResult,
            String told) {}

    /** How many items are in a state. */
    public record Count(String state, Long items) {}

    /**
     * What is to be told.
     *
     * @param detections how many of them are detections
     * @param since when the oldest was released; null where nothing waits
     * @param timeZone of the oldest's station
     */
    public record Waiting(Long count, Long detections, Instant since, String timeZone) {}

    /** What is released of one animal for one disease. */
    public record Released(
            String kit,
            String disease,
            String diseaseName,
            String outcome,
            String station,
            String stationName,
            LocalDate diedOn,
            String species,
            String speciesName,
            String registration) {}

    record OfAttempt(String kit, String disease) {}

    /** Where a page begins: after this row; the first begins after {@link #START}. */
    record Cursor(int place, LocalDate died, String kit, String disease) {
        static final Cursor START = new Cursor(-1, LocalDate.EPOCH, "", "");
        static final LocalDate NEVER = LocalDate.of(9999, 12, 31);
    }

    @SuppressWarnings("unchecked")
    List<Row> page(NotificationFilter filter, String kit, Cursor after, int limit) {
        return rows(filter, kit, after, limit).getResultList();
    }

    /** The whole list in the order of its pages, for a stream of {@link Row}s. */
    Query all(NotificationFilter filter) {
        return rows(filter, "", Cursor.START, null);
    }

    private Query rows(NotificationFilter filter, String kit, Cursor after, Integer limit) {
        return entities.createNativeQuery(PAGE, Row.class)
                .setParameter("state", filter.state())
                .setParameter("season", filter.season())
                .setParameter("disease", filter.disease())
                .setParameter("kit", kit)
                .setParameter("place", after.place())
                .setParameter("died", after.died())
                .setParameter("afterKit", after.kit())
                .setParameter("afterDisease", after.disease())
                .setParameter("limit", limit);
    }

    @SuppressWarnings("unchecked")
    List<Count> counts(String season) {
        return entities.createNativeQuery(COUNTS, Count.class)
                .setParameter("season", season)
                .getResultList();
    }

    Waiting waiting() {
        return (Waiting) entities.createNativeQuery(WAITING, Waiting.class).getSingleResult();
    }

    /** Released outcomes of animals, newest first; those entered in error are left out. */
    @SuppressWarnings("unchecked")
    public List<Released> released(List<String> kits) {
        return kits.isEmpty()
                ? List.of()
                : entities.createNativeQuery(OUTCOMES, Released.class)
                        .setParameter("kits", kits)
                        .getResultList();
    }

    @SuppressWarnings("unchecked")
    List<AttemptView> attempts(String kit, String disease) {
        return entities.createNativeQuery(ATTEMPTS, AttemptView.class)
                .setParameter("kit", kit)
                .setParameter("disease", disease)
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    Optional<OfAttempt> ofAttempt(UUID id) {
        return ((List<OfAttempt>) entities.createNativeQuery(OF_ATTEMPT, OfAttempt.class)
                        .setParameter("id", id)
                        .getResultList())
                .stream().findFirst();
    }

    void insert(UUID id, String kit, String disease, RecordAttempt attempt, boolean closes, String by, Instant now) {
        Query insert = entities.createNativeQuery(INSERT)
                .setParameter("id", id)
                .setParameter("kit", kit)
                .setParameter("disease", disease)
                .setParameter("outcome", attempt.outcome())
                .setParameter("channel", attempt.channel().name())
                .setParameter("result", attempt.result().name())
                .setParameter("closes", closes)
                .setParameter("at", attempt.at().toInstant())
                .setParameter("note", attempt.note())
                .setParameter(
                        "corrects",
                        attempt.corrects() == null ? null : attempt.corrects().toString())
                .setParameter("by", by)
                .setParameter("now", now);
        insert.executeUpdate();
    }
}
