package org.dentary.platform.account;

import java.util.List;

/**
 * Who is asking.
 *
 * @param username unique sign-in name
 * @param person roster code of the person, or null for a shared device
 * @param role the one role
 * @param stations station codes the account serves, in set-up order; empty means none, {@code "*"} means all
 */
public record Account(String username, String person, Role role, List<String> stations) {
    public Account {
        stations = List.copyOf(stations);
    }

    /** Whether the account's role may do the act. */
    public boolean may(String act) {
        return Permissions.allows(role, act);
    }

    /** Whether the account serves the station. */
    public boolean serves(String station) {
        return stations.contains("*") || stations.contains(station);
    }

    /** The roster code if there is one, else the sign-in name: the opaque id that ledgers and histories carry. */
    public String actor() {
        return person == null ? username : person;
    }
}
