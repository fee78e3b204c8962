package org.dentary.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.dentary.SeasonFixture;
import org.dentary.platform.DataFolder;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.AccountService;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class FirstAccountTest {
    @Inject
    SeasonFixture season;

    @Inject
    DataFolder files;

    @Inject
    FirstAccount first;

    @Inject
    AccountService accounts;

    @Test
    void aServiceThatStartedWithoutAccountsLeftAPasswordOnlyItsUserMayRead() throws IOException {
        Path file = files.folder("first-sign-in").resolve("password.txt");
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
        String password = Files.readString(file).strip();
        assertEquals(24, password.length());
        season.ensure();
        first.start(null);
        assertEquals(password, Files.readString(file).strip(), "with accounts there is nothing to make");
        assertTrue(accounts.signIn("coordinator", SeasonFixture.PASSWORD).isPresent());
    }
}
