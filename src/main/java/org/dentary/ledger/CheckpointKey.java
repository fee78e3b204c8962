package org.dentary.ledger;

import jakarta.enterprise.context.ApplicationScoped;
import org.dentary.platform.DataFolder;

/** The service's signing key, {@code keys/checkpoint.pem} in the data folder; made at first use. */
@ApplicationScoped
class CheckpointKey {

    private final DataFolder data;
    private volatile SigningKey loaded;

    CheckpointKey(DataFolder data) {
        this.data = data;
    }

    SigningKey get() {
        SigningKey key = loaded;
        if (key == null) {
            key = SigningKey.loadOrCreate(data.folder("keys").resolve("checkpoint.pem"));
            loaded = key;
        }
        return key;
    }
}
