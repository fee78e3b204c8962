/**
 * The shell of every page: its navigation in the order of the sample's journey, signing in and out. What a page says is
 * the business of the room it belongs to. Start reading at {@link org.dentary.platform.page.Shell}.
 */
package org.dentary.platform.page;
