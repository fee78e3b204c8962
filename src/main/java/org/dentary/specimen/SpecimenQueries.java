package org.dentary.specimen;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.Collection;
import java.util.List;

/** Reads specimens, always through the kit their label is bound to today. */
@ApplicationScoped
class SpecimenQueries {
    private static final String COLUMNS = """
            select s.code, l.kit_bound, l.kit_printed, l.part, s.parent, s.tissue, s.tissue_text, s.side, s.condition,
                   s.preservation, s.collected_at, s.collected_by, s.archived, s.recorded_by, s.recorded_at, s.version
              from specimen s join label l on l.code = s.code
            """;
    private static final String BY_CODE = COLUMNS + " where s.code = any(:codes) order by s.code";
    private static final String BY_KIT = COLUMNS + " where l.kit_bound = any(:kits) order by s.collected_at, s.code";
    private static final String CUT_FROM = """
            with recursive piece(code) as (
              select cast(:code as text) union select s.code from specimen s join piece p on s.parent = p.code)
            select p.code from piece p join label l on l.code = p.code where l.kit_bound = :kit order by p.code
            """;
    private static final String PRESERVATION = """
            select p.code, p.preservation, p.since, p.by_actor, p.reason
              from specimen_preservation p join label l on l.code = p.code
             where l.kit_bound = :kit order by p.code, p.since, p.id
            """;
    private static final String VERSION = "select version from specimen where code = :code for update";

    private final EntityManager entities;

    SpecimenQueries(EntityManager entities) {
        this.entities = entities;
    }

    @SuppressWarnings("unchecked")
    List<SpecimenView> byCode(Collection<String> codes) {
        return entities.createNativeQuery(BY_CODE, SpecimenView.class)
                .setParameter("codes", codes.toArray(String[]::new))
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    List<SpecimenView> byKit(Collection<String> kits) {
        return entities.createNativeQuery(BY_KIT, SpecimenView.class)
                .setParameter("kits", kits.toArray(String[]::new))
                .getResultList();
    }

    /** The label itself and those of every piece cut from it, or from a piece of it, as far as they are the kit's. */
    @SuppressWarnings("unchecked")
    List<String> withPieces(String code, String kit) {
        return entities.createNativeQuery(CUT_FROM)
                .setParameter("code", code)
                .setParameter("kit", kit)
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    List<PreservationView> preservation(String kit) {
        return entities.createNativeQuery(PRESERVATION, PreservationView.class)
                .setParameter("kit", kit)
                .getResultList();
    }

    /** Today's version with the row locked, or null. */
    @SuppressWarnings("unchecked")
    Integer lockedVersion(String code) {
        List<Integer> found =
                entities.createNativeQuery(VERSION).setParameter("code", code).getResultList();
        return found.isEmpty() ? null : found.get(0);
    }
}
