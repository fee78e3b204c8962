/**
 * Who holds what, since when, and how it came there. Here is the door for the other rooms and the chain of one specimen
 * as it is shown; hand-overs, events, boxes, discrepancies, checkpoints and the desk have a package each, and all stand
 * on {@code chain}. It does not know what a laboratory found, and it neither hashes nor seals: that is the ledger's.
 * Start reading at {@link org.dentary.custody.chain.CustodyRules}, then
 * {@link org.dentary.custody.CustodyService} and {@link org.dentary.custody.handover.HandOverService}.
 */
package org.dentary.custody;
