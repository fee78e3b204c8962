/**
 * Who signs in and what they may do: accounts, hashed sessions, the six roles and the one table of permissions. People on
 * the roster and their training are the room {@code people}. Start reading at {@link
 * org.dentary.platform.account.Permissions}.
 */
package org.dentary.platform.account;
