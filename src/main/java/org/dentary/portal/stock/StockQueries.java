package org.dentary.portal.stock;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;

/** Adds up what became of kits, by block, in one query over the rooms that use them. */
@ApplicationScoped
class StockQueries {
    // Labels are looked at only where the kit has no animal of its own, and voided ones by their own index: most kits
    // are used, and few labels are voided. Tissue under a label of such a kit is another kit's animal's by
    // re-attribution.
    private static final String TALLIES = """
            with mine as (
                select b.id, b.season, b.station, b.issued_at from kit_block b where %s
            ), kits as (
                select k.block, coalesce(a.station, free.station) as station, coalesce(a.season, free.season) as season,
                       case when a.kit is not null or free.used then 'USED'
                            when free.voided = free.labels then 'VOID'
                            else coalesce(f.fate, 'LEFT') end as fate
                  from mine
                  join kit k on k.block = mine.id
                  left join animal a on a.kit = k.code
                  left join kit_fate f on f.kit = k.code
                  left join lateral (
                      select count(*) as labels, count(l.voided_at) as voided,
                             bool_or(s.code is not null or x.code is not null) as used,
                             min(o.station) as station, min(o.season) as season
                        from label l
                        left join specimen s on s.code = l.code
                        left join box x on x.code = l.code
                        left join animal o on s.code is not null and o.kit = l.kit_bound
                       where a.kit is null and l.kit_printed = k.code) free on true
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
             order by mine.issued_at desc, mine.id desc
            """;
    private static final String OF_BLOCKS = TALLIES.formatted("b.id = any(cast(:blocks as uuid[]))");
    private static final String OF_STATIONS =
            TALLIES.formatted("(:everywhere or b.station = any(:stations)) and (:always or b.season = any(:seasons))");
    private static final String USED = """
            select k.code from kit k
             where k.code = any(:kits)
               and (exists (select 1 from animal a where a.kit = k.code)
                    or exists (select 1 from label l where l.kit_printed = k.code
                                and (exists (select 1 from specimen s where s.code = l.code)
                                     or exists (select 1 from box x where x.code = l.code))))
             order by k.code
            """;

    private final EntityManager entities;

    StockQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** Of some blocks, the newest first. */
    @SuppressWarnings("unchecked")
    List<BlockTally> tallies(Collection<UUID> blocks) {
        return entities.createNativeQuery(OF_BLOCKS, BlockTally.class)
                .setParameter(
                        "blocks", "{" + blocks.stream().map(UUID::toString).collect(Collectors.joining(",")) + "}")
                .getResultList();
    }

    /** Of every block of some stations and seasons, empty for all of them; the newest first, to be streamed or read. */
    Query tallies(Optional<List<String>> stations, Optional<List<String>> seasons) {
        return entities.createNativeQuery(OF_STATIONS, BlockTally.class)
                .setParameter("everywhere", stations.isEmpty())
                .setParameter("stations", stations.orElse(List.of()).toArray(String[]::new))
                .setParameter("always", seasons.isEmpty())
                .setParameter("seasons", seasons.orElse(List.of()).toArray(String[]::new));
    }

    /** Those of some kits under which an animal, a specimen or a box is recorded. */
    @SuppressWarnings("unchecked")
    List<String> used(Collection<String> kits) {
        return entities.createNativeQuery(USED)
                .setParameter("kits", kits.toArray(String[]::new))
                .getResultList();
    }
}
