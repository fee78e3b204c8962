package org.dentary.platform.account;

/** An account as stored; {@code stations} is comma-separated, {@code passwordHash} a bcrypt string. */
record AccountRow(String username, String person, String role, String stations, String passwordHash) {
    Account toAccount() {
        java.util.List<String> serves =
                stations == null || stations.isEmpty() ? java.util.List.of() : java.util.List.of(stations.split(","));
        return new Account(username, person, Role.valueOf(role), serves);
    }
}
