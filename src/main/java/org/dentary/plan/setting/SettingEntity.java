package org.dentary.plan.setting;

import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

/** One value of one setting, changed by hand; files write many at once. */
@Entity
@Table(name = "plan_setting")
class SettingEntity {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    private Long id;

    private String name;
    private String value;
    private String season;
    private String region;
    private String unit;

    protected SettingEntity() {}

    SettingEntity(String name, String season, String region, String unit) {
        this.name = name;
        this.season = season;
        this.region = region;
        this.unit = unit;
    }

    void become(String value) {
        this.value = value;
    }
}
