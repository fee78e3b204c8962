package org.dentary.setup;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;

/** Loads and stores set-up files. */
@ApplicationScoped
class SetUpImportRepository implements PanacheRepositoryBase<SetUpImport, UUID> {}
