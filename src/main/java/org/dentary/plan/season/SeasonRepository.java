package org.dentary.plan.season;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;

/** Loads seasons to open and close them. */
@ApplicationScoped
class SeasonRepository implements PanacheRepositoryBase<Season, String> {}
