package org.dentary.result.outcome;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.Collection;
import java.util.List;

/** Loads everything that decides the outcomes of many animals in a fixed number of statements. */
@ApplicationScoped
class OutcomeQueries {
    /** Kits of the animals: the kit that counts, and those that point to it; each by an index. */
    private static final String MEMBER = """
            with roots as (select distinct coalesce(a.same_as, a.kit) as root from animal a where a.kit in (:kits)),
            member as (
              select root, root as kit from roots
              union all
              select r.root, a.kit from roots r join animal a on a.same_as = r.root)
            """;

    /** Waits for whoever derives the same animals: what they recorded is then there to be read. */
    private static final String HOLD = MEMBER + """
            select a.kit from animal a where a.kit in (select kit from member) order by a.kit for no key update
            """;

    private static final String MEMBERS = MEMBER + """
            select m.root, a.kit, coalesce(a.season, '') as season, coalesce(u.region, '') as region,
                   coalesce(a.unit, '') as unit
              from member m join animal a on a.kit = m.kit left join management_unit u on u.code = a.unit
             order by 1, 2
            """;

    /**
     * An order is answered by a final finding on the tissue, or a piece of it, or by its loss; another order of the same
     * laboratory only by what was reported since it left. Joins, no query per row.
     */
    private static final String TISSUES = """
            with tissue as (
              select l.kit_bound as kit, s.code, s.parent, s.archived, s.tissue, s.side
                from label l join specimen s on s.code = l.code where l.kit_bound in (:kits)),
            family as (
              select code, code as piece from tissue
              union all
              select s.parent, s.code from specimen s join tissue t on t.code = s.parent),
            answered as (
              select m.code, f.laboratory, max(f.reported_on) as last_on
                from family m join finding_specimen fs on fs.code = m.piece join finding f on f.id = fs.finding
               where f.status <> 'PRELIMINARY' and f.finding <> 'INVALID_RUN'
               group by m.code, f.laboratory),
            lost as (
              select distinct d.code from discrepancy d join tissue t on t.code = d.code
               where d.outcome in ('LOST', 'DESTROYED')),
            sent as (
              select x.code, b.laboratory, (b.dispatched_at at time zone 'UTC')::date as left_on,
                     row_number() over (partition by x.code, b.laboratory order by x.recorded_at, b.id) as turn
                from tissue t join submission_specimen x on x.code = t.code join submission b on b.id = x.submission
               where coalesce(x.receipt, '') <> 'RECALLED'),
            ordered as (
              select x.code, count(*) as orders,
                     count(*) filter (where o.code is not null or a.last_on is not null and (x.turn = 1 or a.last_on >= x.left_on))
                       as reports
                from sent x
                left join answered a on a.code = x.code and a.laboratory = x.laboratory
                left join lost o on o.code = x.code
               group by x.code)
            select t.kit, t.code, t.parent, t.archived, t.tissue, t.side, coalesce(o.orders, 0) as orders,
                   coalesce(o.reports, 0) as reports
              from tissue t left join ordered o on o.code = t.code
             order by t.code
            """;

    private static final String FINDINGS = """
            select l.kit_bound as kit, f.disease, f.id::text, f.method, f.stage, f.finding, f.status, f.tested_on, f.pool,
                   f.corrects::text as corrects, s.code, s.tissue, s.side,
                   (cardinality(m.accepted_tissues) = 0 or s.tissue = any (m.accepted_tissues)) as accepted
              from finding f join test_method m on m.code = f.method
              join finding_specimen fs on fs.finding = f.id join specimen s on s.code = fs.code
              join label l on l.code = s.code
             where l.kit_bound in (:kits)
             order by f.id, s.code
            """;
    /** Specimens for which an exception was granted or refused, and what was cut from them. */
    private static final String IDENTITIES = """
            select l.kit_bound as kit, i.code, i.standing from specimen_standing i join label l on l.code = i.code
             where l.kit_bound in (:kits) and i.standing <> 'OPEN' order by i.code, i.standing
            """;

    private static final String RELEASED = """
            select distinct on (kit, disease) kit, disease, derived_outcome from release where kit in (:kits)
             order by kit, disease, id desc
            """;
    private static final String WITHDRAW = """
            insert into release (kit, disease, derived_outcome, reason, by_actor, at)
            select w.kit, w.disease, w.derived, 'the findings say otherwise now',
                   coalesce(nullif(current_setting('dentary.actor', true), ''), 'service'), :at
              from unnest(cast(:kits as text[]), cast(:diseases as text[]), cast(:derived as text[])) as w(kit, disease, derived)
            """;
    private static final String EXPLAIN = """
            insert into outcome_explanation (kit, disease, explanation, review, rules, derived_at)
            select kit, disease, explanation, nullif(review, ''), rules, :at
              from unnest(cast(:kits as text[]), cast(:diseases as text[]), cast(:explanations as text[]),
                          cast(:reviews as text[]), cast(:rules as text[])) as e(kit, disease, explanation, review, rules)
            on conflict (kit, disease) do update
               set explanation = excluded.explanation, review = excluded.review, rules = excluded.rules,
                   derived_at = excluded.derived_at
             where (outcome_explanation.explanation, outcome_explanation.review, outcome_explanation.rules)
                   is distinct from (excluded.explanation, excluded.review, excluded.rules)
            """;
    private static final String JUDGED = """
            select distinct coalesce(a.season, '') as season, coalesce(u.region, '') as region,
                   coalesce(a.unit, '') as unit, e.rules
              from outcome_explanation e join animal a on a.kit = e.kit
              left join management_unit u on u.code = a.unit
             order by 1, 2, 3, 4
            """;
    private static final String JUDGED_SO = """
            with so as (select * from unnest(cast(:seasons as text[]), cast(:units as text[]), cast(:rules as text[]))
                               as s(season, unit, rules))
            select distinct e.kit from outcome_explanation e join animal a on a.kit = e.kit
              join so on so.season = coalesce(a.season, '') and so.unit = coalesce(a.unit, '') and so.rules = e.rules
             order by 1
            """;
    private static final String TESTED_BY = """
            select distinct l.kit_bound from finding f join finding_specimen s on s.finding = f.id
              join label l on l.code = s.code where f.method in (:methods) order by 1
            """;

    private final EntityManager entities;

    OutcomeQueries(EntityManager entities) {
        this.entities = entities;
    }

    record Member(String root, String kit, String season, String region, String unit) {}

    record Tissue(
            String kit,
            String code,
            String parent,
            Boolean archived,
            String tissue,
            String side,
            Long orders,
            Long reports) {}

    record Finding(
            String kit,
            String disease,
            String id,
            String method,
            String stage,
            String finding,
            String status,
            java.time.LocalDate testedOn,
            Boolean pool,
            String corrects,
            String code,
            String tissue,
            String side,
            Boolean accepted) {}

    record Identity(String kit, String code, String standing) {}

    /** Where animals were judged, and by which rules; empty texts for none. */
    record Judged(String season, String region, String unit, String rules) {}

    record Released(String kit, String disease, String outcome) {}

    @SuppressWarnings("unchecked")
    List<String> kitsOf(Collection<String> codes) {
        return codes.isEmpty()
                ? List.of()
                : entities.createNativeQuery("select distinct kit_bound from label where code in (:codes) order by 1")
                        .setParameter("codes", codes)
                        .getResultList();
    }

    /** Keeps the animals from being derived by others until the transaction ends. */
    void hold(Collection<String> kits) {
        entities.createNativeQuery(HOLD).setParameter("kits", kits).getResultList();
    }

    List<Member> members(Collection<String> kits) {
        return rows(MEMBERS, Member.class, kits);
    }

    List<Tissue> tissues(Collection<String> kits) {
        return rows(TISSUES, Tissue.class, kits);
    }

    List<Finding> findings(Collection<String> kits) {
        return rows(FINDINGS, Finding.class, kits);
    }

    List<Identity> identities(Collection<String> kits) {
        return rows(IDENTITIES, Identity.class, kits);
    }

    List<Released> released(Collection<String> kits) {
        return rows(RELEASED, Released.class, kits);
    }

    /** Takes releases back whose detection is none any more: a later one is looked at and released anew. */
    void withdraw(List<String> kits, List<String> diseases, List<String> derived, Instant at) {
        entities.createNativeQuery(WITHDRAW)
                .setParameter("kits", kits.toArray(String[]::new))
                .setParameter("diseases", diseases.toArray(String[]::new))
                .setParameter("derived", derived.toArray(String[]::new))
                .setParameter("at", at)
                .executeUpdate();
    }

    void explain(
            List<String> kits,
            List<String> diseases,
            List<String> explanations,
            List<String> reviews,
            List<String> rules,
            Instant at) {
        entities.createNativeQuery(EXPLAIN)
                .setParameter("kits", kits.toArray(String[]::new))
                .setParameter("diseases", diseases.toArray(String[]::new))
                .setParameter("explanations", explanations.toArray(String[]::new))
                .setParameter("reviews", reviews.toArray(String[]::new))
                .setParameter("rules", rules.toArray(String[]::new))
                .setParameter("at", at)
                .executeUpdate();
    }

    /** Every place and rules that an outcome was derived for. */
    @SuppressWarnings("unchecked")
    List<Judged> judged() {
        return entities.createNativeQuery(JUDGED, Judged.class).getResultList();
    }

    /** Animals that were judged in those places by those rules. */
    @SuppressWarnings("unchecked")
    List<String> kitsJudged(List<Judged> so) {
        return entities.createNativeQuery(JUDGED_SO)
                .setParameter("seasons", so.stream().map(Judged::season).toArray(String[]::new))
                .setParameter("units", so.stream().map(Judged::unit).toArray(String[]::new))
                .setParameter("rules", so.stream().map(Judged::rules).toArray(String[]::new))
                .getResultList();
    }

    /** Animals with a finding by one of the methods. */
    @SuppressWarnings("unchecked")
    List<String> kitsTestedBy(Collection<String> methods) {
        return entities.createNativeQuery(TESTED_BY)
                .setParameter("methods", methods)
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    private <T> List<T> rows(String sql, Class<T> row, Collection<String> kits) {
        return entities.createNativeQuery(sql, row).setParameter("kits", kits).getResultList();
    }
}
