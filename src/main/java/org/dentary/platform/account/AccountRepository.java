package org.dentary.platform.account;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;

/** Loads and stores accounts. */
@ApplicationScoped
class AccountRepository implements PanacheRepositoryBase<AccountEntity, String> {}
