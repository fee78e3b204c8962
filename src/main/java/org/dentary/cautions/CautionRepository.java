package org.dentary.cautions;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;

/** Loads cautions for review. */
@ApplicationScoped
class CautionRepository implements PanacheRepositoryBase<Caution, Caution.Key> {}
