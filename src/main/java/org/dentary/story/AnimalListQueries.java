package org.dentary.story;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.util.List;
import java.util.Locale;

/** Lists animals newest first, a page at a time; the page begins after a kit. */
@ApplicationScoped
class AnimalListQueries {
    private static final String LIST = """
            select a.kit, a.season, a.station, coalesce(a.unit, 'UNKNOWN'), a.species, a.sex, coalesce(l.age_class, 'UNKNOWN'),
                   coalesce(l.age_disputed, false), a.died_on, a.mortality_source, a.jaw_status,
                   (select cast(count(*) as int) from label b join specimen s on s.code = b.code where b.kit_bound = a.kit),
                   coalesce(l.outcome, 'NOT_TESTED'), coalesce(l.exclusion, ''), a.recorded_at
              from animal a
              left join line l on l.kit = a.kit and l.closed_at is null
               and l.disease = (select code from disease order by position, code limit 1)
             where (cast(:season as text) is null or a.season = :season)
               and (cast(:station as text) is null or a.station = :station)
               and (cast(:stations as text[]) is null or a.station = any(cast(:stations as text[])))
               and (cast(:unit as text) is null or coalesce(a.unit, 'UNKNOWN') = :unit)
               and (cast(:sex as text) is null or a.sex = :sex)
               and (cast(:age as text) is null or l.age_class = :age)
               and (cast(:outcome as text) is null or l.outcome = :outcome)
               and (cast(:q as text) is null or a.kit like :prefix
                    or a.kit in (select b.kit_bound from label b where b.code = :q)
                    or a.kit in (select i.kit from animal_identifier i where upper(i.value) = :words))
               and (cast(:after as text) is null or a.recorded_at <= (select p.recorded_at from animal p where p.kit = :after)
                    and (a.recorded_at, a.kit) < (select p.recorded_at, p.kit from animal p where p.kit = :after))
             order by a.recorded_at desc, a.kit desc
            """;

    private final EntityManager entities;

    AnimalListQueries(EntityManager entities) {
        this.entities = entities;
    }

    @SuppressWarnings("unchecked")
    List<AnimalListItem> page(AnimalFilter filter, String after, int limit) {
        return animals(filter, after).setMaxResults(limit).getResultList();
    }

    /** All animals of the filter, for a stream of {@link AnimalListItem}s. */
    Query animals(AnimalFilter filter) {
        return animals(filter, null);
    }

    private Query animals(AnimalFilter filter, String after) {
        String words = filter.q() == null ? null : filter.q().trim().toUpperCase(Locale.ROOT);
        String code = words == null ? null : words.replaceAll("[\\s-]", "");
        return entities.createNativeQuery(LIST, AnimalListItem.class)
                .setParameter("season", filter.season())
                .setParameter("station", filter.station())
                .setParameter("stations", filter.stations())
                .setParameter("unit", filter.managementUnit())
                .setParameter("sex", filter.sex())
                .setParameter("age", filter.ageClass())
                .setParameter("outcome", filter.outcome())
                .setParameter("q", code)
                .setParameter("prefix", code == null ? null : code.replaceAll("[%_\\\\]", "") + "%")
                .setParameter("words", words)
                .setParameter("after", after);
    }
}
