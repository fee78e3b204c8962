package org.dentary.people;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;

/** Stores acknowledgements. */
@ApplicationScoped
class AcknowledgementRepository implements PanacheRepositoryBase<Acknowledgement, Acknowledgement.Key> {}
