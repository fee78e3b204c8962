package org.dentary.result.correction;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Finds replaced words and who had them, set-based, and reads the work list. */
@ApplicationScoped
class CorrectionQueries {
    /** Lines that were said of the animal: all but those while a label was in doubt. */
    private static final String SAID = """
            and (p.exclusion <> 'NOT_ATTRIBUTABLE' or exists (select 1 from correction c where c.line_after = p.id))
            """;

    /**
     * A revision of the line that replaced the last word that was read. That nothing stands any more counts only where the
     * word was taken back: a detection that is no longer one, or a finding put right. New tissue or a new order of an
     * animal that has an outcome is no correction; nor is it that an animal not tested waits again, for it had no result.
     * While a label is in doubt nothing is said of the animal: what stood before the doubt and what stands after it differ,
     * or do not.
     */
    private static final String FIND = """
            insert into correction (kit, disease, earlier, word, cause, line_before, line_after, at)
            select n.kit, n.disease, b.outcome, n.outcome, n.cause, b.id, n.id, n.opened_at
              from line n
              cross join lateral (select p.id, p.outcome from line p
                                   where p.kit = n.kit and p.disease = n.disease and p.id < n.id and p.outcome <> 'PENDING'
                                     and p.has_specimen
            """ + SAID + """
                                   order by p.id desc limit 1) b
              cross join lateral (select p.outcome from line p
                                   where p.kit = n.kit and p.disease = n.disease and p.id < n.id
            """ + SAID + """
                                   order by p.id desc limit 1) last
             where n.kit = any(cast(:kits as text[])) and n.closed_at is null
               and (n.exclusion = ''
                    or n.exclusion = 'NOT_ATTRIBUTABLE' and exists (select 1 from unidentified_kit u where u.kit = n.kit))
               and n.outcome <> b.outcome and n.outcome <> last.outcome
               and (n.outcome <> 'PENDING' or b.outcome = 'DETECTED'
                    or (n.derived_outcome = 'PENDING' and b.outcome <> 'NOT_TESTED'
                        and n.cause in ('CORRECTION', 'FINDING', 'RE_ATTRIBUTION', 'RE_ATTRIBUTION_REFUSED',
                                        'SAME_AS_UNDONE', 'IDENTITY_EXCEPTION_REFUSED')))
                on conflict (line_after) do nothing
            """;

    /** Who had the word under whichever kit of the animal. */
    private static final String RECIPIENTS = """
            with fresh as (
              select c.id, m.kit, c.disease, c.earlier, c.word from correction c join line l on l.id = c.line_after
                join animal_kit k on k.kit = c.kit join animal_kit m on m.counted = k.counted
               where c.kit = any(cast(:kits as text[])) and l.closed_at is null
                 and not exists (select 1 from correction_recipient r where r.correction = c.id))
            insert into correction_recipient (correction, kind, recipient, named, had, had_by, had_at)
            select f.id, 'CONTACT', f.kit, 'Whoever brought the animal', t.outcome,
                   case when t.result = 'SENT' then 'by letter or message' else 'in person or by telephone' end, t.at
              from fresh f cross join lateral (
                select n.outcome, n.result, n.at from notification_attempt n
                 where n.kit = f.kit and n.disease = f.disease and n.outcome <> f.word and n.result in ('REACHED', 'SENT')
                   and not exists (select 1 from notification_attempt r where r.corrects = n.id)
                 order by n.at desc, n.recorded_at desc limit 1) t
            union all
            select f.id, 'AGENCY', g.id, g.whom, f.earlier, 'from the list of a first detection', g.told_at
              from fresh f join incident_animal a on a.kit = f.kit
              join incident i on i.id = a.incident and i.disease = f.disease
              join incident_telling g on g.incident = i.id and g.told_at is not null
            union all
            select f.id, 'ROLE', o.role, o.role, 'DETECTED', 'as a released detection in lists and reports', d.opened_at
              from fresh f cross join lateral (
                select min(l.opened_at) as opened_at from line l
                 where l.kit = f.kit and l.disease = f.disease and l.outcome = 'DETECTED') d
              cross join unnest(cast(:roles as text[])) as o(role)
             where d.opened_at is not null and f.word <> 'DETECTED'
            union all
            select f.id, 'CUT', cast(u.id as text), u.name, l.outcome,
                   case when l.exclusion = '' and l.outcome in ('DETECTED', 'NOT_DETECTED') then 'counted in'
                        else 'stands in' end
                     || ' this data cut of season ' || u.season || ', '
                     || (select count(*) from report_answer a where a.cut = u.id) || ' answers kept', u.made_at
              from fresh f join line l on l.kit = f.kit and l.disease = f.disease
               and l.outcome not in ('PENDING', f.word) and l.has_specimen
              join data_cut_line x on x.line = l.id join data_cut u on u.id = x.cut
                on conflict (correction, kind, recipient) do nothing
            """;

    private static final String STANDING = """
            with newest as (select kit, disease, max(id) as id from correction group by kit, disease),
            told as (
              select r.*, case r.kind
                       when 'CONTACT' then exists (select 1 from notification_attempt n join correction c on c.id = r.correction
                              where n.kit = r.recipient and n.disease = c.disease and n.closes
                                and n.outcome in (c.word, 'NOT_ATTRIBUTABLE')
                                and n.recorded_at > c.at
                                and not exists (select 1 from notification_attempt x where x.corrects = n.id))
                       when 'CUT' then exists (select 1 from data_cut u where u.id = cast(r.recipient as uuid)
                                                and u.superseded_at > (select c.at from correction c where c.id = r.correction))
                            or exists (select 1 from correction_attempt t where t.recipient = r.id and t.result <> 'NO_ANSWER')
                       else exists (select 1 from correction_attempt t where t.recipient = r.id and t.result <> 'NO_ANSWER')
                     end as told
                from correction_recipient r),
            head as (
              select c.id, c.kit, c.disease, d.name as disease_name, c.earlier, c.word, c.cause, c.at, n.station, s.time_zone,
                     case when w.id <> c.id then 'SUPERSEDED'
                          when exists (select 1 from told t where t.correction = c.id and not t.told) then 'OPEN'
                          else 'DONE' end as state,
                     (select count(*) from told t where t.correction = c.id) as people,
                     (select count(*) from told t where t.correction = c.id and t.told) as knowing
                from correction c join newest w on w.kit = c.kit and w.disease = c.disease
                join disease d on d.code = c.disease join animal n on n.kit = c.kit join station s on s.code = n.station)
            """;
    private static final String HEADS = STANDING + """
            select id, kit, disease, disease_name, earlier, word, cause, at, station, time_zone, state, people, knowing
              from head where (:state = '' or state = :state) and (:id = 0 or id = :id) and id < :before
             order by id desc limit cast(:limit as int)
            """;
    private static final String OPEN = STANDING + """
            select count(*), min(at) from head where state = 'OPEN'
            """;
    private static final String OF = STANDING + """
            select t.id, t.kind, t.recipient, t.named, t.had, t.had_by, t.had_at, t.told,
                   (select count(*) from correction_attempt a where a.recipient = t.id) as attempts
              from told t where t.correction = :id
             order by case t.kind when 'CONTACT' then 0 when 'AGENCY' then 1 when 'ROLE' then 2 else 3 end, t.had_at, t.id
            """;
    private static final String ATTEMPTS = """
            select a.id, a.recipient, a.channel, a.result, a.at, a.note, a.by_actor
              from correction_attempt a join correction_recipient r on r.id = a.recipient
             where r.correction = :id order by a.at, a.recorded_at
            """;
    private static final String IS_RECORDED = "select count(*) from correction_attempt where id = :id";
    private static final String INSERT = """
            insert into correction_attempt (id, recipient, channel, result, at, note, by_actor, recorded_at)
            values (:id, :recipient, :channel, :result, :at, cast(:note as text), :by, :now)
            """;

    private final EntityManager entities;

    CorrectionQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** How many corrections are to be told, and since when; null where none is. */
    public record Waiting(Long count, Instant since) {}

    /** Records what the last revision of the animals' lines replaced, and who had it; how many words that were. */
    int find(List<String> kits, List<String> roles) {
        String[] those = kits.toArray(String[]::new);
        int found = entities.createNativeQuery(FIND).setParameter("kits", those).executeUpdate();
        if (found > 0) {
            entities.createNativeQuery(RECIPIENTS)
                    .setParameter("kits", those)
                    .setParameter("roles", roles.toArray(String[]::new))
                    .executeUpdate();
        }
        return found;
    }

    @SuppressWarnings("unchecked")
    List<CorrectionView.Head> heads(String state, long id, long before, int limit) {
        return heads(state, id, before, Integer.valueOf(limit)).getResultList();
    }

    /** All of a state (empty for every one), newest first, for a stream of {@link CorrectionView.Head}s. */
    Query heads(String state) {
        return heads(state, 0, Long.MAX_VALUE, null);
    }

    private Query heads(String state, long id, long before, Integer limit) {
        return entities.createNativeQuery(HEADS, CorrectionView.Head.class)
                .setParameter("state", state)
                .setParameter("id", id)
                .setParameter("before", before)
                .setParameter("limit", limit);
    }

    Waiting open() {
        return (Waiting) entities.createNativeQuery(OPEN, Waiting.class).getSingleResult();
    }

    Optional<CorrectionView> correction(long id) {
        return heads("", id, Long.MAX_VALUE, 1).stream()
                .findFirst()
                .map(head -> new CorrectionView(
                        head,
                        rows(OF, CorrectionView.Recipient.class, id),
                        rows(ATTEMPTS, CorrectionView.Attempt.class, id)));
    }

    boolean isRecorded(UUID id) {
        return ((Number) entities.createNativeQuery(IS_RECORDED)
                                .setParameter("id", id)
                                .getSingleResult())
                        .longValue()
                > 0;
    }

    void insert(UUID id, long recipient, RecordTry attempt, String by, Instant now) {
        entities.createNativeQuery(INSERT)
                .setParameter("id", id)
                .setParameter("recipient", recipient)
                .setParameter("channel", attempt.channel().name())
                .setParameter("result", attempt.result().name())
                .setParameter("at", attempt.at().toInstant())
                .setParameter("note", attempt.note())
                .setParameter("by", by)
                .setParameter("now", now)
                .executeUpdate();
    }

    @SuppressWarnings("unchecked")
    private <T> List<T> rows(String sql, Class<T> row, long id) {
        return entities.createNativeQuery(sql, row).setParameter("id", id).getResultList();
    }
}
