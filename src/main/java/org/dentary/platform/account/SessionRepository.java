package org.dentary.platform.account;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;

/** Loads and stores sessions. */
@ApplicationScoped
class SessionRepository implements PanacheRepositoryBase<SessionEntity, String> {}
