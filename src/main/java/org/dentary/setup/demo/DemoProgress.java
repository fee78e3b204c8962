package org.dentary.setup.demo;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;

/** Knows how far the demo was loaded: its last step makes a data cut. */
@ApplicationScoped
class DemoQueries {
    private final EntityManager entities;

    DemoQueries(EntityManager entities) {
        this.entities = entities;
    }

    boolean hasCut(String name) {
        return ((Number) entities.createNativeQuery("select count(*) from data_cut where name = :name")
                                .setParameter("name", name)
                                .getSingleResult())
                        .intValue()
                > 0;
    }
}
