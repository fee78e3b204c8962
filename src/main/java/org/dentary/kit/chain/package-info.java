/**
 * Labels on the ledger: a block's chain begins when its labels are issued and tells every voiding and every print made
 * again. A specimen's own chain begins with collecting and is the custody room's. Start reading at
 * {@link org.dentary.kit.chain.BlockChain}.
 */
package org.dentary.kit.chain;
