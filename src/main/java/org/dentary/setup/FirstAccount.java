package org.dentary.setup;

import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.enterprise.event.Observes;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.List;
import org.dentary.platform.DataFolder;
import org.dentary.platform.account.AccountService;
import org.dentary.platform.account.Role;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/**
 * Lets the first coordinator in: a service without any account makes {@code coordinator} and leaves its password in a file
 * of mode 600 under the data folder. The demo brings its own accounts.
 */
@ApplicationScoped
class FirstAccount {
    private static final Logger LOG = Logger.getLogger(FirstAccount.class);
    private static final String NAME = "coordinator";

    private final AccountService accounts;
    private final DataFolder files;
    private final boolean demo;

    FirstAccount(
            AccountService accounts,
            DataFolder files,
            @ConfigProperty(name = "dentary.demo", defaultValue = "false") boolean demo) {
        this.accounts = accounts;
        this.files = files;
        this.demo = demo;
    }

    @ActivateRequestContext
    void start(@Observes StartupEvent event) {
        if (demo || !accounts.all().isEmpty()) {
            return;
        }
        byte[] bytes = new byte[18];
        new SecureRandom().nextBytes(bytes);
        String password = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
        Path file = write(password);
        accounts.put(NAME, null, Role.COORDINATOR, List.of("*"), password);
        LOG.info("No account yet: made '" + NAME + "', its password is in " + file
                + "; sign in, set up persons and accounts, then delete the file");
    }

    private Path write(String password) {
        Path file = files.folder("first-sign-in").resolve("password.txt");
        try {
            Files.deleteIfExists(file);
            Files.createFile(file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
            Files.writeString(file, password + "\n", StandardCharsets.UTF_8, StandardOpenOption.WRITE);
            return file;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
