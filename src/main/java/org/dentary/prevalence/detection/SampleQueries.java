package org.dentary.prevalence.detection;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.time.Instant;
import java.util.List;
import org.dentary.prevalence.question.ReportQuestion;
import org.dentary.prevalence.question.Scope;
import org.dentary.prevalence.question.Step;

/** Counts the sampled animals by unit and class: one pass over the season's lines, one over those of the seasons before. */
@ApplicationScoped
class SampleQueries {
    private static final String COUNTS = """
            select l.season, coalesce(l.unit, 'UNKNOWN'), l.age_class, l.sex, l.mortality_source, l.clinical_signs,
                   l.station, %s, count(*), count(*) filter (where l.outcome = 'DETECTED')
              %s %s
             group by 1, 2, 3, 4, 5, 6, 7, 8 order by 1, 2, 3, 4, 5, 6, 7, 8
            """;
    private static final String EARLIER = """
             from line l where l.season in (:seasons) and l.disease = :disease and l.species = :species and
            """;
    private static final String OPEN = "l.closed_at is null";
    private static final String AS_OF = "l.opened_at <= :at and (l.closed_at is null or l.closed_at > :at)";

    private final EntityManager entities;

    SampleQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** The season asked for, live or on its cut. */
    List<SampledGroup> season(ReportQuestion question) {
        Query query = entities.createNativeQuery(COUNTS.formatted(
                Scope.STEP, question.lines().from(), question.filter().sql()));
        question.lines().bind(query);
        return groups(question, query);
    }

    /**
     * Seasons before it.
     *
     * @param seasons codes, at least one
     * @param at as their lines stood then, or null for as they are now
     */
    List<SampledGroup> earlier(ReportQuestion question, List<String> seasons, Instant at) {
        Query query = entities.createNativeQuery(COUNTS.formatted(
                        Scope.STEP,
                        EARLIER + (at == null ? OPEN : AS_OF),
                        question.filter().sql()))
                .setParameter("seasons", seasons)
                .setParameter("disease", question.disease())
                .setParameter("species", question.species());
        if (at != null) {
            query.setParameter("at", at);
        }
        return groups(question, query);
    }

    @SuppressWarnings("unchecked")
    private static List<SampledGroup> groups(ReportQuestion question, Query query) {
        question.filter().bind(query);
        question.scope().bind(query);
        return ((List<Object[]>) query.getResultList())
                .stream()
                        .map(row -> new SampledGroup(
                                (String) row[0],
                                (String) row[1],
                                (String) row[2],
                                (String) row[3],
                                (String) row[4],
                                (String) row[5],
                                (String) row[6],
                                Step.valueOf((String) row[7]),
                                ((Number) row[8]).intValue(),
                                ((Number) row[9]).intValue()))
                        .toList();
    }
}
