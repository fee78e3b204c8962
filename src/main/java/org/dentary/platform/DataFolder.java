package org.dentary.platform;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Files beside the database: keys that a dump of the database must not hold. */
@ApplicationScoped
public class DataFolder {
    private final Path data;

    DataFolder(@ConfigProperty(name = "dentary.data") String data) {
        this.data = Path.of(data);
    }

    /** The folder of that name under the data folder, created if missing. */
    public Path folder(String name) {
        try {
            return Files.createDirectories(data.resolve(name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** 32 random bytes under {@code keys/}, made at first use with mode 600 and the same ever after. */
    public byte[] key(String name) {
        Path file = folder("keys").resolve(name + ".key");
        try {
            if (!Files.exists(file)) {
                byte[] bytes = new byte[32];
                new SecureRandom().nextBytes(bytes);
                Path fresh = Files.createTempFile(
                        file.getParent(),
                        name,
                        null,
                        PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
                Files.write(fresh, bytes);
                try {
                    Files.createLink(file, fresh);
                } catch (FileAlreadyExistsException another) {
                    // another instance was first; its key counts
                }
                Files.delete(fresh);
            }
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
