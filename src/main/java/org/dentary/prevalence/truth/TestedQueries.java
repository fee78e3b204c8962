package org.dentary.prevalence.truth;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.dentary.plan.PlanService;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.prevalence.performance.PerformanceSet;
import org.dentary.prevalence.question.Dimension;
import org.dentary.prevalence.question.ReportQuestion;
import org.dentary.prevalence.question.Scope;

/**
 * Reads which tests the counted animals of a report had: three statements whatever their number. A counted animal's outcome is
 * released, so no finding of it for the disease is withheld.
 */
@ApplicationScoped
class TestedQueries {
    /** Final findings that speak of the animal, on tissue that the method accepts and that no other replaces. */
    private static final String TESTED = """
            with counted as (
              select l.kit from (select l.*, STEP as step LINES) as l where l.step = 'COUNTED'),
            members as (
              select c.kit as root, c.kit from counted c
              union all
              select c.kit, a.kit from animal a join counted c on c.kit = a.same_as),
            tested as (
              select distinct k.root as kit, f.method, s.tissue, f.pool,
                     f.method = any (cast(:methods as text[])) and s.tissue = any (cast(:tissues as text[])) and not f.pool
                     as inside
                from members k
                join label b on b.kit_bound = k.kit
                join finding_specimen fs on fs.code = b.code
                join specimen s on s.code = fs.code
                join finding f on f.id = fs.finding
                join test_method m on m.code = f.method
               where f.disease = :disease and f.status in ('FINAL', 'CORRECTED')
                 and f.finding in ('DETECTED', 'NOT_DETECTED', 'SUSPECT', 'INCONCLUSIVE')
                 and (f.stage <> 'ADJUNCT' or f.method = any (cast(:adjuncts as text[])))
                 and (cardinality(m.accepted_tissues) = 0 or s.tissue = any (m.accepted_tissues))
                 and f.recorded_at <= :at
                 and not exists (select 1 from finding z where z.corrects = f.id and z.recorded_at <= :at))
            """;

    private static final String ANIMALS = TESTED + """
            select cast(count(*) as int), cast(count(*) filter (where k.all_in) as int),
                   cast(count(*) filter (where k.one_in and not k.all_in) as int)
              from (select c.kit, coalesce(bool_or(t.inside), false) as one_in, coalesce(bool_and(t.inside), false) as all_in
                      from counted c left join tested t on t.kit = c.kit group by c.kit) as k
            """;
    private static final String TESTS = TESTED + """
            select t.method, m.name as methodName, t.tissue, t.pool, t.inside as inSet, cast(count(*) as int) as animals
              from tested t join test_method m on m.code = t.method
             group by 1, 2, 3, 4, 5 order by 6 desc, 1, 3, 4
            """;

    private static final String OTHERWISE = TESTED + """
            select BY, cast(count(*) as int)
              from (select c.*, exists (select 1 from tested t where t.kit = c.kit and t.inside) as inside from counted c) as k
             where not k.inside group by BY
            """;

    private final EntityManager entities;
    private final PlanService plan;

    TestedQueries(EntityManager entities, PlanService plan) {
        this.entities = entities;
        this.plan = plan;
    }

    /**
     * The tests of the animals that a report counts.
     *
     * @param question settled
     * @param at findings told after that are left out
     */
    @SuppressWarnings("unchecked")
    Tested of(ReportQuestion question, PerformanceSet set, Instant at) {
        Object[] animals = (Object[]) bound(ANIMALS, null, question, set, at).getSingleResult();
        int counted = ((Number) animals[0]).intValue();
        int within = ((Number) animals[1]).intValue();
        int partly = ((Number) animals[2]).intValue();
        return new Tested(
                counted,
                within,
                partly,
                counted - within - partly,
                bound(TESTS, Tested.Test.class, question, set, at).getResultList());
    }

    /** Of each cell of the report that has any: how many of its animals were tested by nothing the set speaks of. */
    @SuppressWarnings("unchecked")
    Map<Map<String, String>, Integer> otherwise(ReportQuestion question, PerformanceSet set, Instant at) {
        List<Dimension> by = question.by();
        List<String> names =
                by.stream().map(d -> "by_" + d.name().toLowerCase(Locale.ROOT)).toList();
        String told = by.stream()
                .map(d -> d.expression() + " as by_" + d.name().toLowerCase(Locale.ROOT))
                .collect(Collectors.joining(", "));
        String sql = OTHERWISE
                .replace("select l.kit from", "select l.kit, " + told + " from")
                .replace("BY", String.join(", ", names));
        Map<Map<String, String>, Integer> otherwise = new HashMap<>();
        for (Object[] row : (List<Object[]>) bound(sql, null, question, set, at).getResultList()) {
            Map<String, String> group = new HashMap<>();
            for (int i = 0; i < by.size(); i++) {
                group.put(by.get(i).field(), row[i].toString());
            }
            otherwise.put(group, ((Number) row[by.size()]).intValue());
        }
        return otherwise;
    }

    private Query bound(String sql, Class<?> row, ReportQuestion question, PerformanceSet set, Instant at) {
        String text = sql.replace("STEP", Scope.STEP)
                .replace("LINES", question.lines().from() + question.filter().sql());
        Query query = row == null ? entities.createNativeQuery(text) : entities.createNativeQuery(text, row);
        question.lines().bind(query);
        question.filter().bind(query);
        question.scope().bind(query);
        List<String> adjuncts =
                plan.settings().codes(PlanSetting.ADJUNCT_METHODS_THAT_COUNT, question.season(), null, null);
        return query.setParameter("methods", set.methods().toArray(String[]::new))
                .setParameter("tissues", set.tissues().toArray(String[]::new))
                .setParameter("adjuncts", adjuncts.toArray(String[]::new))
                .setParameter("at", at);
    }
}
