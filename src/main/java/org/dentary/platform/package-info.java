/**
 * The ground of the service: start-up, database, problems, accounts and sessions, requests that can be repeated, tables
 * that leave the house, and the shell of every page. It knows nothing of deer, labels or laboratories. Start reading at
 * {@link org.dentary.platform.Main}.
 */
package org.dentary.platform;
