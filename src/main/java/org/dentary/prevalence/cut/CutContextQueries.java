package org.dentary.prevalence.cut;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.UUID;

/**
 * Reads what a cut's figures wait for, at the moment it is made: two statements whatever the season's size. Where tissue
 * went after more was derived than released is left out, for sending it on to confirm would tell what is not released.
 */
@ApplicationScoped
class CutContextQueries {
    private static final String STATIONS = """
            select s.code as station, s.name, max(a.recorded_at) as lastReceivedAt, cast(count(a.kit) as int) as animals
              from station s left join animal a on a.station = s.code and a.season = :season
             group by s.code, s.name, s.position order by s.position, s.code
            """;
    private static final String LABORATORIES = """
            select w.laboratory, b.name, cast(count(*) as int) as animals, min(w.dispatched_at) as oldestSentAt
              from (select distinct on (l.kit) l.kit, s.laboratory, s.dispatched_at
                      from data_cut_line c
                      join line l on l.id = c.line
                      left join embargo e on e.kit = l.kit
                      left join (label t join submission_specimen p on p.code = t.code
                                 join submission s on s.id = p.submission and s.dispatched_at is not null)
                             on t.kit_bound = l.kit and (e.since is null or greatest(p.recorded_at, s.dispatched_at) < e.since)
                     where c.cut = :cut and l.outcome = 'PENDING' and l.exclusion = ''
                     order by l.kit, s.dispatched_at desc nulls last) w
              left join laboratory b on b.code = w.laboratory
             group by w.laboratory, b.name order by 3 desc, 1 nulls last
            """;

    private final EntityManager entities;

    CutContextQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** The context of a cut whose lines are in place. */
    @SuppressWarnings("unchecked")
    CutContext of(UUID cut, String season) {
        List<CutContext.StationSync> stations = entities.createNativeQuery(STATIONS, CutContext.StationSync.class)
                .setParameter("season", season)
                .getResultList();
        List<CutContext.LaboratoryPending> laboratories = entities.createNativeQuery(
                        LABORATORIES, CutContext.LaboratoryPending.class)
                .setParameter("cut", cut)
                .getResultList();
        return new CutContext(stations, laboratories);
    }
}
