package org.dentary.animal;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;

/** Loads and stores animals. */
@ApplicationScoped
class AnimalRepository implements PanacheRepositoryBase<Animal, String> {}
