package org.dentary.platform.account;

import jakarta.enterprise.context.RequestScoped;
import java.util.Optional;

/** The account behind the request at hand; nobody until the request has been authenticated. */
@RequestScoped
public class CurrentAccount {
    private Account account;

    /** The account, or empty when nobody is signed in. */
    public Optional<Account> find() {
        return Optional.ofNullable(account);
    }

    /**
     * The account.
     *
     * @throws IllegalStateException if nobody is signed in; routes that need one carry {@code @PermissionsAllowed}
     */
    public Account get() {
        return find().orElseThrow(() -> new IllegalStateException("no account on this request"));
    }

    /** Acts as this account from here on: after authentication, and where the service itself replays what people did. */
    public void become(Account account) {
        this.account = account;
    }
}
