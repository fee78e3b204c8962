package org.dentary.plan.setting;

import io.quarkus.hibernate.orm.panache.PanacheRepository;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Objects;
import java.util.Optional;

/** Loads and stores single settings. */
@ApplicationScoped
class SettingRepository implements PanacheRepository<SettingEntity> {
    Optional<SettingEntity> of(String name, String season, String region, String unit) {
        return find(
                        "name = ?1 and coalesce(season, '') = ?2 and coalesce(region, '') = ?3"
                                + " and coalesce(unit, '') = ?4",
                        name,
                        Objects.requireNonNullElse(season, ""),
                        Objects.requireNonNullElse(region, ""),
                        Objects.requireNonNullElse(unit, ""))
                .firstResultOptional();
    }
}
