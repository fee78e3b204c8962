package org.dentary.portal.stock;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;

/** Adds up what became of kits, by block, in one query over the rooms that use them. */
@ApplicationScoped
class StockQueries {
    // Labels are looked at only where the kit has no animal, and voided ones by their own index: most kits are used,
    // and
    // few labels are voided.
    private static final String TALLIES = """
            with mine as (
                select b.id, b.season, b.station, b.issued_at from kit_block b where b.id = any(cast(:blocks as uuid[]))
            ), kits as (
                select k.block, a.station, a.season,
                       case when a.kit is not null or free.used then 'USED'
                            when free.voided = free.labels then 'VOID'
                            else coalesce(f.fate, 'LEFT') end as fate
                  from mine
                  join kit k on k.block = mine.id
                  left join animal a on a.kit = k.code
                  left join kit_fate f on f.kit = k.code
                  left join lateral (
                      select count(*) as labels, count(l.voided_at) as voided,
                             bool_or(exists (select 1 from specimen s where s.code = l.code)
                                     or exists (select 1 from box x where x.code = l.code)) as used
                        from label l where a.kit is null and l.kit_printed = k.code) free on true
            ), voided as (
                select k.block, count(*) as labels
                  from label l join kit k on k.code = l.kit_printed join mine on mine.id = k.block
                 where l.voided_at is not null
                 group by k.block
            )
            select mine.id, mine.season, mine.station,
                   (select count(*) from label_print p where p.block = mine.id), count(*),
                   count(*) filter (where kits.fate = 'USED'), count(*) filter (where kits.fate = 'VOID'),
                   count(*) filter (where kits.fate = 'LOST'), count(*) filter (where kits.fate = 'RETURNED'),
                   count(*) filter (where kits.fate = 'LEFT'),
                   count(*) filter (where kits.station <> mine.station),
                   count(*) filter (where kits.season <> mine.season),
                   coalesce((select voided.labels from voided where voided.block = mine.id), 0)
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
                .setParameter(
                        "blocks", "{" + blocks.stream().map(UUID::toString).collect(Collectors.joining(",")) + "}")
                .getResultList();
    }
}
