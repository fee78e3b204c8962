package org.dentary.result;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Reads findings and the tissue they name; writes one finding with its specimens. */
@ApplicationScoped
class FindingQueries {
    private static final String SELECT = """
            select f.id::text, (select string_agg(fs.code, ' ' order by fs.code) from finding_specimen fs where fs.finding = f.id),
                   f.method, f.disease, f.stage, f.finding, f.status, f.laboratory, f.performing_laboratory, f.accession, f.item,
                   f.tested_on,
                   f.reported_on, f.reason, f.measured_value, f.pool, f.corrects::text,
                   (select c.id::text from finding c where c.corrects = f.id), f.import::text, f.import_line,
                   f.recorded_by, f.recorded_at
              from finding f
            """;
    private static final String SPECIMENS = """
            select s.code, s.parent, l.kit_bound as kit, s.collected_at, coalesce(t.time_zone, 'UTC') as zone,
                   coalesce((select string_agg(distinct b.laboratory, ' ') from submission_specimen x
                              join submission b on b.id = x.submission
                             where x.code = s.code or x.code = s.parent), '') as laboratories
              from specimen s join label l on l.code = s.code
              left join animal a on a.kit = l.kit_bound left join station t on t.code = a.station
             where s.code in (:codes) order by s.code
            """;
    private static final String INSERT = """
            insert into finding (id, method, disease, stage, finding, status, laboratory, performing_laboratory, accession, item,
                   tested_on, reported_on, reason, measured_value, pool, corrects, recorded_by, recorded_at)
            values (:id, :method, :disease, :stage, :finding, :status, :laboratory, :performing, :accession, :item,
                    :testedOn, :reportedOn, :reason, :measuredValue, :pool, :corrects, :by, :at)
            """;
    private static final String NAME =
            "insert into finding_specimen (finding, code) select :id, unnest(cast(:codes as text[]))";
    private static final String SAME_ITEM = """
            select count(*) from finding f join finding_specimen fs on fs.finding = f.id
             where f.laboratory = :laboratory and f.accession = :accession and f.item = :item
               and fs.code not in (:codes) and not exists (select 1 from finding c where c.corrects = f.id)
            """;

    private final EntityManager entities;

    FindingQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** A specimen that a finding names; {@code laboratories} are those on its route, separated by spaces. */
    record Specimen(String code, String parent, String kit, Instant collectedAt, String zone, String laboratories) {}

    @SuppressWarnings("unchecked")
    Optional<FindingView> find(UUID id) {
        return ((List<FindingView>) entities.createNativeQuery(SELECT + " where f.id = :id", FindingView.class)
                        .setParameter("id", id)
                        .getResultList())
                .stream().findFirst();
    }

    @SuppressWarnings("unchecked")
    List<FindingView> ofKit(String kit) {
        return entities.createNativeQuery(
                        SELECT
                                + " where exists (select 1 from finding_specimen fs join label l on l.code = fs.code where fs.finding = f.id"
                                + " and l.kit_bound = :kit) order by f.recorded_at, f.id",
                        FindingView.class)
                .setParameter("kit", kit)
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    List<Specimen> specimens(Collection<String> codes) {
        return entities.createNativeQuery(SPECIMENS, Specimen.class)
                .setParameter("codes", codes)
                .getResultList();
    }

    /** Waits for whoever records of the laboratory now, by hand or by file, so that an item is judged by all that stands. */
    void lockLaboratory(String laboratory) {
        entities.createNativeQuery("select 1 from laboratory where code = :code for no key update")
                .setParameter("code", laboratory)
                .getSingleResult();
    }

    /** Whether the laboratory's item already stands on another specimen. */
    boolean itemIsTaken(String laboratory, String accession, String item, Collection<String> codes) {
        return ((Number) entities.createNativeQuery(SAME_ITEM)
                                .setParameter("laboratory", laboratory)
                                .setParameter("accession", accession)
                                .setParameter("item", item)
                                .setParameter("codes", codes)
                                .getSingleResult())
                        .longValue()
                > 0;
    }

    void insert(
            UUID id, RecordFinding f, String disease, boolean pool, Collection<String> codes, String by, Instant at) {
        entities.unwrap(Session.class)
                .createNativeMutationQuery(INSERT)
                .setParameter("id", id)
                .setParameter("method", f.method())
                .setParameter("disease", disease)
                .setParameter("stage", f.stage().name())
                .setParameter("finding", f.finding().name())
                .setParameter("status", f.status().name())
                .setParameter("laboratory", f.laboratory())
                .setParameter("performing", f.performingLaboratory(), String.class)
                .setParameter("accession", f.accession().trim())
                .setParameter("item", f.item(), String.class)
                .setParameter("testedOn", f.testedOn(), LocalDate.class)
                .setParameter("reportedOn", f.reportedOn())
                .setParameter("reason", f.reason() == null ? null : f.reason().name(), String.class)
                .setParameter("measuredValue", f.measuredValue(), String.class)
                .setParameter("pool", pool)
                .setParameter("corrects", f.corrects(), UUID.class)
                .setParameter("by", by)
                .setParameter("at", at)
                .executeUpdate();
        entities.createNativeQuery(NAME)
                .setParameter("id", id)
                .setParameter("codes", codes.toArray(String[]::new))
                .executeUpdate();
    }
}
