package org.dentary.prevalence.detection;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.concurrent.atomic.AtomicInteger;
import org.dentary.SeasonFixture;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.SettingService;

/** Management units of a test's own, with settings and weights of their own: no other test's animals are in them. */
@ApplicationScoped
public class ChanceFixture {
    private static final AtomicInteger UNITS = new AtomicInteger();

    private final EntityManager entities;
    private final SettingService settings;
    private final SeasonFixture seasons;

    ChanceFixture(EntityManager entities, SettingService settings, SeasonFixture seasons) {
        this.entities = entities;
        this.settings = settings;
        this.seasons = seasons;
    }

    /** A fresh unit with the plan's defaults but a test of sensitivity .95; returns its code. */
    @Transactional
    public String unit() {
        seasons.ensure();
        String code = "C_UNIT_" + UNITS.incrementAndGet();
        entities.createNativeQuery("insert into management_unit (code, name, position) values (:code, :name, 100)")
                .setParameter("code", code)
                .setParameter("name", "Chance unit " + code)
                .executeUpdate();
        set(PlanSetting.TEST_SENSITIVITY, "0.95", code);
        set(PlanSetting.TEST_SENSITIVITY_SOURCE, "Invented 2026", code);
        return code;
    }

    /** People call the unit so; another may be called alike. */
    @Transactional
    public void called(String unit, String name) {
        entities.createNativeQuery("update management_unit set name = :name where code = :code")
                .setParameter("name", name)
                .setParameter("code", unit)
                .executeUpdate();
    }

    /** Puts the unit before all others in set-up order, so that a list that leaves the last ones out names it. */
    @Transactional
    public void first(String unit) {
        entities.createNativeQuery(
                        "update management_unit set position = (select least(min(position), 0) - 1 from management_unit) where code = :code")
                .setParameter("code", unit)
                .executeUpdate();
    }

    public void set(PlanSetting setting, String value, String unit) {
        settings.put(setting, value, null, null, unit);
    }

    @Transactional
    public void weight(String set, String age, String sex, String source, double risk) {
        entities.createNativeQuery("""
                        insert into risk_weight (weight_set, disease, species, age_class, sex, mortality_source,
                               clinical_signs, relative_risk, citation)
                        values (:set, 'CWD', :species, :age, :sex, :source, 'NONE_SEEN', :risk, 'Invented for a test')
                        """)
                .setParameter("set", set)
                .setParameter("species", SeasonFixture.SPECIES)
                .setParameter("age", age)
                .setParameter("sex", sex)
                .setParameter("source", source)
                .setParameter("risk", java.math.BigDecimal.valueOf(risk))
                .executeUpdate();
    }

    /** A station in the unit; returns its code. */
    @Transactional
    public String station(String unit) {
        String code = unit.replace("UNIT", "STATION");
        entities.createNativeQuery(
                        "insert into station (code, name, position, unit, time_zone) values (:code, :code, 100, :unit, 'America/Chicago')")
                .setParameter("code", code)
                .setParameter("unit", unit)
                .executeUpdate();
        return code;
    }

    /** A boundary for the unit: the quadrangle of those corners, longitude first. */
    @Transactional
    public void boundary(String unit, String ring) {
        entities.createNativeQuery(
                        "update management_unit set boundary = :geometry, boundary_version = '2026' where code = :code")
                .setParameter("geometry", "{\"type\":\"Polygon\",\"coordinates\":[[" + ring + "]]}")
                .setParameter("code", unit)
                .executeUpdate();
    }

    /** Sends a node of each kit to the test laboratory and reports it so many days after its receipt. */
    @Transactional
    public void report(java.util.List<String> kits, java.time.LocalDate received, int days) {
        java.util.UUID submission = java.util.UUID.randomUUID();
        entities.createNativeQuery("""
                        insert into submission (id, laboratory, state, dispatched_at, received_at, opened_by, opened_at)
                        values (:id, 'T_LAB', 'RECEIVED', cast(:on as date) + time '15:00', cast(:on as date) + time '18:00',
                                'test', cast(:on as date))
                        """)
                .setParameter("id", submission)
                .setParameter("on", received.toString())
                .executeUpdate();
        for (String sql : new String[] {
            "insert into label (code, part, kit_printed, kit_bound) select code || 'X1', 'NODES', code, code from kit where code in (:kits)",
            """
            insert into specimen (code, tissue, side, condition, preservation, collected_at, collected_by, recorded_by, recorded_at)
            select code || 'X1', 'MEDIAL_RETROPHARYNGEAL_NODE', 'BOTH', 'GOOD', 'FRESH_CHILLED', now(), 'test', 'test', now()
              from kit where code in (:kits)
            """,
            "insert into submission_specimen (submission, code, packed_at, packed_by, recorded_at) select '"
                    + submission + "', code || 'X1', now(), 'test', now() from kit where code in (:kits)",
            """
            insert into finding (id, method, disease, stage, finding, status, laboratory, accession, item, tested_on,
                   reported_on, recorded_by, recorded_at)
            select cast(md5(code) as uuid), 'T_SCREEN', 'CWD', 'SCREENING', 'NOT_DETECTED', 'FINAL', 'T_LAB', code, code,
                   cast('DAY' as date) - 1, cast('DAY' as date), 'test', now()
              from kit where code in (:kits)
            """.replace("DAY", received.plusDays(days).toString()),
            "insert into finding_specimen (finding, code) select cast(md5(code) as uuid), code || 'X1' from kit where code in (:kits)"
        }) {
            entities.createNativeQuery(sql).setParameter("kits", kits).executeUpdate();
        }
    }

    /** Tissue of the first kits turns out to be of the others, as a label swap that was put right leaves it. */
    @Transactional
    public void moved(java.util.List<String> from, java.util.List<String> to) {
        for (int i = 0; i < from.size(); i++) {
            entities.createNativeQuery("update label set kit_bound = :to where kit_bound = :from")
                    .setParameter("from", from.get(i))
                    .setParameter("to", to.get(i))
                    .executeUpdate();
        }
    }
}
