/**
 * Who holds what, since when, and how it came there: hand-overs, boxes, stores, custody events, discrepancies and the
 * dossier of one specimen. It does not know what a laboratory found, and it neither hashes nor seals: that is the
 * ledger's. Start reading at {@link org.dentary.custody.CustodyRules}, then {@link org.dentary.custody.CustodyService}
 * and {@link org.dentary.custody.HandOverService}.
 */
package org.dentary.custody;
