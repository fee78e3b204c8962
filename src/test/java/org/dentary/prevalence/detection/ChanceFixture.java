package org.dentary.prevalence.detection;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.concurrent.atomic.AtomicInteger;
import org.dentary.SeasonFixture;
import org.dentary.plan.PlanSetting;
import org.dentary.plan.SettingService;

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
}
