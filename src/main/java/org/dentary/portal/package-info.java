/**
 * The doors of the house: the home page of each role ({@code home}), the box that finds anything ({@code find}), what a code
 * is and where it is ({@code code}), how a station's kits add up ({@code stock}), what a problem means ({@code problem}),
 * and here the description of the API. It reads from every room and keeps nothing of its own. Start reading at {@link
 * org.dentary.portal.find.FindService}.
 */
package org.dentary.portal;
