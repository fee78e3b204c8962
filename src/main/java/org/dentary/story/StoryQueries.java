package org.dentary.story;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;

/** Reads across the rooms for one animal. What a role may not know is left out here, in SQL, not later. */
@ApplicationScoped
class StoryQueries {
    /** Why an outcome is what it is. */
    record Explanation(String disease, String explanation, String review, String rules) {}

    record EarlierExplanation(String disease, String explanation, String rules, Instant derivedAt, Instant until) {}

    /** Where the labels of a kit were issued. */
    record Issue(String season, String station) {}

    private static final String FINDINGS = """
            select cast(f.id as text), f.disease, f.method, f.stage, f.finding, f.status, f.laboratory, f.performing_laboratory,
                   f.accession, f.item,
                   f.tested_on, f.reported_on, f.reason, f.measured_value,
                   (select string_agg(s.code, ' ' order by s.code) from finding_specimen s where s.finding = f.id),
                   f.pool, exists (select 1 from finding c where c.corrects = f.id) as corrected
              from finding f
             where f.id in (select fs.finding from finding_specimen fs join label l on l.code = fs.code
                             where l.kit_bound = :kit)
             order by f.reported_on, f.recorded_at, f.id
            """;
    private static final String EXPLANATIONS = """
            select disease, explanation, review, rules from outcome_explanation where kit = :kit order by disease
            """;
    /** The history keeps rows as they were: those before the rules were kept have none. */
    private static final String EARLIER_EXPLANATIONS = """
            select h.old ->> 'disease' as disease, h.old ->> 'explanation' as explanation,
                   coalesce(h.old ->> 'rules', '') as rules, cast(h.old ->> 'derived_at' as timestamptz) as derived_at, h.at
              from history h where h.table_name = 'outcome_explanation' and h.key = :kit
             order by h.at desc, h.id desc
            """;

    private static final String ISSUE = """
            select b.season, b.station from kit k join kit_block b on b.id = k.block where k.code = :kit
            """;
    /** Custody is told up to the first laboratory's receipt where more would let a reader guess at a confirmation. */
    private static final String TIMELINE = """
            with family as (
              select m.kit from animal_kit k join animal_kit m on m.counted = k.counted where k.kit = :kit),
            swap as (
              select distinct r.* from family f join re_attribution r on r.from_kit = f.kit or r.to_kit = f.kit),
            code as (select s.code from specimen s join label l on l.code = s.code where l.kit_bound = :kit),
            custody as (
              select e.*, count(a.sequence) over (partition by e.chain order by e.sequence
                     rows between unbounded preceding and 1 preceding) as received_before
                from ledger_event e join code c on c.code = e.chain
                left join laboratory_arrival a on a.chain = e.chain and a.sequence = e.sequence
               where e.kind not like 'IDENTITY_EXCEPTION%'),
            outcomes as (
              select l.opened_at, l.disease, l.cause, l.outcome, l.derived_outcome,
                     lag(l.outcome) over w as outcome_before, lag(l.derived_outcome) over w as derived_before
                from line l where l.kit = :kit window w as (partition by l.disease order by l.id))
            select at, what, subject, by_actor, words from (
              select a.recorded_at as at, 'TAKEN_IN' as what, cast(null as text) as subject, a.recorded_by as by_actor,
                     cast(null as text) as words, 1 as rank from animal a where a.kit = :kit
              union all
              select h.at, 'CORRECTED', null, h.actor, h.reason, 2 from history h
               where h.table_name = 'animal' and h.key = :kit and h.reason is not null
              union all
              select r.received_at, case when r.blind then 'JAW_READ_AGAIN' else 'JAW_READ' end, null, r.examiner, null, 3
                from jaw_reading r where r.kit = :kit
              union all
              select d.at, 'AGE_DESIGNATED', null, d.by_actor, d.reason, 4 from designated_age d where d.kit = :kit
              union all
              select e.occurred_at, e.kind, e.chain, e.actor,
                     case when e.entered_at - e.occurred_at > make_interval(hours => :lateHours) then 'LATE' end, 5
                from custody e where :knowing or coalesce(e.received_before, 0) = 0
              union all
              select r.asked_at, 'RE_ATTRIBUTION_ASKED', r.code, r.asked_by, r.reason, 6 from swap r
              union all
              select d.at, case when d.confirmed then 'RE_ATTRIBUTION_CONFIRMED' else 'RE_ATTRIBUTION_REFUSED' end, r.code,
                     d.by_actor, d.reason, 7
                from swap r join re_attribution_decision d on d.re_attribution = r.id
              union all
              select i.asked_at, 'IDENTITY_EXCEPTION_ASKED', i.code, i.asked_by, null, 6
                from identity_exception i join code c on c.code = i.code
              union all
              select d.at, case when d.granted then 'IDENTITY_EXCEPTION_GRANTED' else 'IDENTITY_EXCEPTION_REFUSED' end,
                     i.code, d.by_actor, null, 7
                from identity_exception i join code c on c.code = i.code
                join identity_exception_decision d on d.exception = i.id
              union all
              select k.at, case when k.same_as is null then 'UNLINKED' else 'LINKED' end, coalesce(k.same_as, k.kit),
                     k.by_actor, k.reason, 8 from animal_link k where k.kit = :kit or k.same_as = :kit
              union all
              select o.opened_at, 'OUTCOME', o.disease, 'service',
                     case when :knowing then o.derived_outcome || case when o.outcome <> o.derived_outcome
                          then ' (released: ' || o.outcome || ')' else '' end else o.outcome end, 9
                from outcomes o
               where o.outcome_before is not null
                 and (o.outcome <> o.outcome_before or :knowing and o.derived_outcome <> o.derived_before)) happened
             order by at, rank, subject
            """;

    private final EntityManager entities;

    StoryQueries(EntityManager entities) {
        this.entities = entities;
    }

    @SuppressWarnings("unchecked")
    List<FindingRow> findings(String kit) {
        return entities.createNativeQuery(FINDINGS, FindingRow.class)
                .setParameter("kit", kit)
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    List<EarlierExplanation> earlierExplanations(String kit) {
        return entities.createNativeQuery(EARLIER_EXPLANATIONS, EarlierExplanation.class)
                .setParameter("kit", kit)
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    List<Explanation> explanations(String kit) {
        return entities.createNativeQuery(EXPLANATIONS, Explanation.class)
                .setParameter("kit", kit)
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    List<Issue> issue(String kit) {
        return entities.createNativeQuery(ISSUE, Issue.class)
                .setParameter("kit", kit)
                .getResultList();
    }

    /**
     * What happened, oldest first.
     *
     * @param knowing whether the reader may know outcomes that are not released
     * @param lateHours hours from happening to entry beyond which a custody event is late
     */
    @SuppressWarnings("unchecked")
    List<Happening> timeline(String kit, boolean knowing, int lateHours) {
        return entities.createNativeQuery(TIMELINE, Happening.class)
                .setParameter("kit", kit)
                .setParameter("knowing", knowing)
                .setParameter("lateHours", lateHours)
                .getResultList();
    }
}
