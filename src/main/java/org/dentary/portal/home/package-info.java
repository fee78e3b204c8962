/**
 * The first page: what waits for the person who signed in. Each role has a class of its own that reads and counts; nothing is
 * written. Start reading at {@link org.dentary.portal.home.HomeService}.
 */
package org.dentary.portal.home;
