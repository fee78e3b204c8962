package org.dentary.platform.account;

import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.runtime.QuarkusPrincipal;
import io.quarkus.security.runtime.QuarkusSecurityIdentity;
import java.util.Optional;

/** Dresses an account as the identity that the framework's permission checks read. */
final class AccountIdentity {
    static final String ACCOUNT = "dentary.account";
    static final String BY_COOKIE = "dentary.by-cookie";

    private AccountIdentity() {}

    static SecurityIdentity of(Optional<Account> found, boolean byCookie) {
        Account account = found.orElseThrow(AuthenticationFailedException::new);
        return QuarkusSecurityIdentity.builder()
                .setPrincipal(new QuarkusPrincipal(account.username()))
                .addRole(account.role().name())
                .addPermissionsAsString(Permissions.of(account.role()))
                .addAttribute(ACCOUNT, account)
                .addAttribute(BY_COOKIE, byCookie)
                .build();
    }
}
