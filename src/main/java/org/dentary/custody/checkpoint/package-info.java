/**
 * The ledger as people see it: its checkpoints, sealing now, the key, what to take away as proof. The algorithms are
 * {@link org.dentary.ledger.CheckpointService}'s. Start reading at {@link org.dentary.custody.checkpoint.LedgerPages}.
 */
package org.dentary.custody.checkpoint;
