/**
 * What was typed or scanned in the box of every page, found or explained. Where it leads is for the page it leads to. Start
 * reading at {@link org.dentary.portal.find.FindService}.
 */
package org.dentary.portal.find;
