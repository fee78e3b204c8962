/**
 * Kits and their labels: blocks issued to a station, the codes in them, which kit each label is bound to, printing,
 * voiding. It does not know which animal, specimen or box a label was used for; the rooms to the right do, and whoever
 * needs both asks from the top. Start reading at {@link org.dentary.kit.KitService}.
 */
package org.dentary.kit;
