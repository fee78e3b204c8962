/**
 * What every act of custody stands on: heads and holders, the rules of times and of who may, events planned, appended
 * and read back. It knows no hand-over, box or page, and no other room should use it but for the kinds and the concerns.
 * Start reading at {@link org.dentary.custody.chain.CustodyRules}, then {@link org.dentary.custody.chain.ChainWriter}.
 */
package org.dentary.custody.chain;
