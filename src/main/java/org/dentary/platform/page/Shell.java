package org.dentary.platform.page;

import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Named;
import java.util.List;
import java.util.Optional;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.AccountFilter;
import org.dentary.platform.account.CurrentAccount;

/** What the layout shows around every page; templates read it as {@code cdi:shell}. */
@Named("shell")
@RequestScoped
public class Shell {
    private final CurrentAccount current;
    private final RoutingContext request;

    Shell(CurrentAccount current, RoutingContext request) {
        this.current = current;
        this.request = request;
    }

    public boolean isSignedIn() {
        return account().isPresent();
    }

    public String getUsername() {
        return account().map(Account::username).orElse("");
    }

    public String getRoleWords() {
        return account().map(account -> account.role().words()).orElse("");
    }

    /** Whether the account may do an act, so that a page offers only what will be accepted. */
    public boolean may(String act) {
        return account().map(account -> account.may(act)).orElse(false);
    }

    /** The stops this account may visit, in the order a sample travels. */
    public List<Stop> getStops() {
        String path = request.request().path();
        return Stop.ALL.stream()
                .filter(stop -> may(stop.act()))
                .map(stop -> stop.at(path))
                .toList();
    }

    /** Also whoever was refused before the request reached its page: the way on stays in sight. */
    private Optional<Account> account() {
        return current.find().or(() -> AccountFilter.authenticated(request));
    }
}
