package org.dentary.portal.home;

import org.dentary.platform.account.Account;

/**
 * Who opens the house, and in which season.
 *
 * @param account the account signed in
 * @param name the person's name, or the account's where it has no person
 * @param season season code, empty where none is set up
 * @param where the season's name, or that none is set up
 */
record Visit(Account account, String name, String season, String where) {}
