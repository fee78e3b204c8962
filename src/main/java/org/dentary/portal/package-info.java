/**
 * The doors of the house: the home page of each role, the box that finds anything, what a code is and where it is, how a
 * station's kits add up, and what a problem means. It reads from every room and keeps nothing of its own. Start reading
 * at {@link org.dentary.portal.find.FindService}.
 */
package org.dentary.portal;
