package org.dentary.portal;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.Collection;
import java.util.List;
import java.util.UUID;

/** Adds up what became of kits, by block, in one query over the rooms that use them. */
@ApplicationScoped
class StockQueries {
    private static final String TALLIES = """
            with mine as (
                select b.id, b.season, b.station, b.issued_at from kit_block b where cast(b.id as text) = any(:blocks)
            ), labels as (
                select l.kit_printed as kit, count(*) as labels,
                       count(*) filter (where l.voided_at is not null) as voided,
                       bool_or(s.code is not null or x.code is not null) as used
                  from mine
                  join kit k on k.block = mine.id
                  join label l on l.kit_printed = k.code
                  left join specimen s on s.code = l.code
                  left join box x on x.code = l.code
                 group by l.kit_printed
            ), kits as (
                select k.block, a.station, a.season, labels.voided as void_labels,
                       case when a.kit is not null or labels.used then 'USED'
                            when labels.voided = labels.labels then 'VOID'
                            else coalesce(f.fate, 'LEFT') end as fate
                  from mine
                  join kit k on k.block = mine.id
                  join labels on labels.kit = k.code
                  left join animal a on a.kit = k.code
                  left join kit_fate f on f.kit = k.code
            )
            select mine.id, mine.season, mine.station,
                   (select count(*) from label_print p where p.block = mine.id), count(*),
                   count(*) filter (where kits.fate = 'USED'), count(*) filter (where kits.fate = 'VOID'),
                   count(*) filter (where kits.fate = 'LOST'), count(*) filter (where kits.fate = 'RETURNED'),
                   count(*) filter (where kits.fate = 'LEFT'),
                   count(*) filter (where kits.station <> mine.station),
                   count(*) filter (where kits.season <> mine.season),
                   cast(sum(kits.void_labels) as bigint)
              from mine join kits on kits.block = mine.id
             group by mine.id, mine.season, mine.station, mine.issued_at
             order by mine.issued_at desc, mine.id
            """;

    private final EntityManager entities;

    StockQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** Newest block first. */
    @SuppressWarnings("unchecked")
    List<BlockTally> tallies(Collection<UUID> blocks) {
        return entities.createNativeQuery(TALLIES, BlockTally.class)
                .setParameter("blocks", blocks.stream().map(UUID::toString).toArray(String[]::new))
                .getResultList();
    }
}
