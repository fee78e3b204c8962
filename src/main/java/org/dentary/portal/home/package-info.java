/** The first page: what waits for the person who signed in. */
package org.dentary.portal.home;
