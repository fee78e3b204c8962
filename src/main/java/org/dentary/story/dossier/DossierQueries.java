package org.dentary.story.dossier;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.Collection;
import java.util.List;

/** Reads across the rooms for dossiers, however many codes in one query each. */
@ApplicationScoped
class DossierQueries {
    private static final String IDENTITIES = """
            select l.code, l.part, l.kit_printed, l.kit_bound, l.voided_at is not null, issued.name,
                   s.parent, s.tissue, s.tissue_text, s.side, s.condition, s.preservation, s.collected_at,
                   coalesce(p.name, s.collected_by), species.name, a.sex, a.died_on, a.died_on_precision,
                   unit.name, station.name, coalesce(station.time_zone, issued.time_zone), season.name,
                   exists (select 1 from animal_kit m join re_attribution r on m.kit in (r.from_kit, r.to_kit)
                            where m.counted = coalesce(a.same_as, a.kit)
                              and not exists (select 1 from re_attribution_decision d where d.re_attribution = r.id)),
                    coalesce(a.entered_in_error, false), a.same_as, a.collection_route
              from label l
              join kit k on k.code = l.kit_printed
              join kit_block b on b.id = k.block
              join station issued on issued.code = b.station
              left join specimen s on s.code = l.code
              left join person p on p.code = s.collected_by
              left join animal a on a.kit = l.kit_bound and l.part <> 'BOX'
              left join species on species.code = a.species
              left join management_unit unit on unit.code = a.unit
              left join station on station.code = a.station
              left join season on season.code = a.season
             where l.code = any(:codes) order by l.code
            """;
    private static final String PRESERVATIONS = """
            select s.code, s.preservation, s.since, coalesce(p.name, s.by_actor), s.reason
              from specimen_preservation s left join person p on p.code = s.by_actor
             where s.code = any(:codes) order by s.code, s.since, s.id
            """;
    /** Of each label and of those that its specimen was cut from: a piece goes where its specimen goes. */
    private static final String RE_ATTRIBUTIONS = """
            with recursive lineage (of, code) as (
                select code, code from unnest(cast(:codes as text[])) as c (code)
                union
                select l.of, s.parent from specimen s join lineage l on s.code = l.code where s.parent is not null)
            select g.of, r.code, r.from_kit, r.to_kit, r.reason, r.evidence, coalesce(asker.name, r.asked_by), r.asked_at,
                   case when d.confirmed is null then 'ASKED' when d.confirmed then 'CONFIRMED' else 'REFUSED' end,
                   coalesce(decider.name, d.by_actor), d.at, d.reason as decision_reason
              from lineage g
              join re_attribution r on r.code = g.code
              left join re_attribution_decision d on d.re_attribution = r.id
              left join person asker on asker.code = r.asked_by
              left join person decider on decider.code = d.by_actor
             order by g.of, r.asked_at, r.id
            """;

    private static final String CORRECTIONS = """
            select h.key, h.at, coalesce(p.name, h.actor), h.reason
              from history h left join person p on p.code = h.actor
             where h.table_name = 'specimen' and h.key = any(:codes) and h.reason is not null
             order by h.key, h.at
            """;
    private static final String OF_SEASON = """
            select s.code from specimen s
              join label l on l.code = s.code
              join animal a on a.kit = l.kit_bound
              join custody_head h on h.code = s.code
             where a.season = :season order by s.code collate "C"
            """;

    private final EntityManager entities;

    DossierQueries(EntityManager entities) {
        this.entities = entities;
    }

    List<Identity> identities(Collection<String> codes) {
        return read(IDENTITIES, Identity.class, codes);
    }

    List<Dossier.Preservation> preservations(Collection<String> codes) {
        return read(PRESERVATIONS, Dossier.Preservation.class, codes);
    }

    List<Dossier.ReAttribution> reAttributions(Collection<String> codes) {
        return read(RE_ATTRIBUTIONS, Dossier.ReAttribution.class, codes);
    }

    List<Dossier.Correction> corrections(Collection<String> codes) {
        return read(CORRECTIONS, Dossier.Correction.class, codes);
    }

    /** The specimens in custody of a season's animals, sorted by their bytes. */
    @SuppressWarnings("unchecked")
    List<String> ofSeason(String season) {
        return entities.createNativeQuery(OF_SEASON)
                .setParameter("season", season)
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    private <T> List<T> read(String sql, Class<T> row, Collection<String> codes) {
        return entities.createNativeQuery(sql, row)
                .setParameter("codes", codes.toArray(String[]::new))
                .getResultList();
    }
}
