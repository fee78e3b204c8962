package org.dentary.portal.day;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Counts a day at a station and names what does not add up; three statements, however many animals there were. */
@ApplicationScoped
class DayQueries {
    private static final String DAY = """
            with day as materialized (
              select a.kit, a.jaw_status from animal a
               where a.station = :station and a.recorded_at >= cast(:from as timestamptz)
                 and a.recorded_at < cast(:to as timestamptz) and not a.entered_in_error),
            jar as materialized (
              select s.code, b.kit_bound as kit, h.custodian_kind as with_kind, h.box
                from specimen s join label b on b.code = s.code join animal a on a.kit = b.kit_bound
                left join custody_head h on h.code = s.code
               where a.station = :station and not a.entered_in_error
                 and coalesce(h.last_kind, '') not in ('DESTROYED', 'LOST')
                 and s.collected_at >= cast(:from as timestamptz) and s.collected_at < cast(:to as timestamptz)),
            node as materialized (
              select b.kit_bound as kit, count(*) filter (where s.side = 'BOTH') as both,
                     count(distinct s.side) filter (where s.side in ('LEFT', 'RIGHT')) as sides
                from specimen s join label b on b.code = s.code
               where b.kit_bound in (select kit from day) and s.tissue = 'MEDIAL_RETROPHARYNGEAL_NODE' and s.parent is null
               group by 1)
            """;
    private static final String HAS_TISSUE =
            "exists (select 1 from label b join specimen s on s.code = b.code where b.kit_bound = d.kit)";
    private static final String HAS_NUMBER = "exists (select 1 from animal_identifier i where i.kit = d.kit)";
    private static final String HAS_PHOTO =
            "exists (select 1 from jaw_photo p where p.kit = d.kit and p.erased_at is null)";
    private static final String HAS_READING = "exists (select 1 from jaw_reading r where r.kit = d.kit)";
    private static final String COUNTS = DAY + """
            select 'animals', count(*) from day d
            union all select 'numbered', count(*) from day d where %1$s
            union all select 'tissue', count(*) from day d where %2$s
            union all select 'somebody', count(*) from day d
                       where exists (select 1 from vault.contact c where c.kit = d.kit and c.names_somebody)
            union all select 'read', count(*) from day d where %4$s
            union all select 'kept', count(*) from day d where d.jaw_status = 'COLLECTED_TO_READ' and not %4$s
            union all select 'photographed', count(*) from day d where d.jaw_status = 'PHOTO_TO_READ'
            union all select 'photos', count(*) from day d where d.jaw_status = 'PHOTO_TO_READ' and %3$s
            union all select 'unexamined', count(*) from day d where d.jaw_status = 'NOT_EXAMINED' and not %4$s
            union all select 'jars', count(*) from jar
            union all select 'boxed', count(*) from jar where box is not null and with_kind is distinct from 'PARTY'
            union all select 'stored', count(*) from jar where box is null and with_kind = 'STORE'
            union all select 'away', count(*) from jar where with_kind = 'PARTY'
            union all select 'loose', count(*) from jar where box is null and with_kind = 'PERSON'
            union all select 'error', count(*) from animal a
                       where a.station = :station and a.entered_in_error
                         and a.recorded_at >= cast(:from as timestamptz) and a.recorded_at < cast(:to as timestamptz)
            """.formatted(HAS_NUMBER, HAS_TISSUE, HAS_PHOTO, HAS_READING);
    private static final String GAPS = DAY + """
            select kit, code, what from (
              select d.kit, '' as code, 'NO_TISSUE' as what from day d where not %2$s
              union all select n.kit, '', 'ONE_NODE' from node n where n.both = 0 and n.sides = 1
              union all select d.kit, '', 'NO_PHOTO' from day d where d.jaw_status = 'PHOTO_TO_READ' and not %3$s
              union all select d.kit, '', 'NO_NUMBER' from day d where not %1$s
              union all select j.kit, j.code, 'LOOSE' from jar j where j.box is null and j.with_kind = 'PERSON') as gap
             order by kit, what, code
            """.formatted(HAS_NUMBER, HAS_TISSUE, HAS_PHOTO);
    private static final String JARS = DAY + "select j.code, j.kit, j.with_kind from jar j order by j.kit, j.code";

    private final EntityManager entities;

    DayQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** A day of a station: from its midnight to the next. */
    record Span(String station, LocalDate date, Instant from, Instant to) {}

    /** A name and its count. */
    record Count(String what, Long count) {}

    /**
     * A jar taken that day.
     *
     * @param withKind who has it: PERSON, STORE or PARTY; null for nobody yet
     */
    record Jar(String code, String kit, String withKind) {
        /** Whether it should be on the table: nobody away has it. */
        boolean isHere() {
            return !"PARTY".equals(withKind) && !"STORE".equals(withKind);
        }
    }

    @SuppressWarnings("unchecked")
    Map<String, Long> counts(Span day) {
        return ((List<Count>) query(COUNTS, Count.class, day).getResultList())
                .stream().collect(Collectors.toMap(Count::what, Count::count));
    }

    @SuppressWarnings("unchecked")
    List<DayGap> gaps(Span day) {
        return query(GAPS, DayGap.class, day).getResultList();
    }

    @SuppressWarnings("unchecked")
    List<Jar> jars(Span day) {
        return query(JARS, Jar.class, day).getResultList();
    }

    private Query query(String sql, Class<?> row, Span day) {
        return entities.createNativeQuery(sql, row)
                .setParameter("station", day.station())
                .setParameter("from", day.from())
                .setParameter("to", day.to());
    }
}
