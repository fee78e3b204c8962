/**
 * Append-only chains of events, the checkpoints that seal them and the proofs that an event lies under a checkpoint.
 * It holds no rule about who may write what and knows nothing of the things its chains are about: a chain is a code, a
 * kind is a word, a person, party or place is an opaque id. Start reading at {@link org.dentary.ledger.LedgerEvent},
 * then {@link org.dentary.ledger.Chain} and {@link org.dentary.ledger.Checkpoint}; the database side is
 * {@link org.dentary.ledger.LedgerStore} and {@link org.dentary.ledger.CheckpointService}; the algorithm for outsiders is
 * in {@code docs/custody-verification.md}.
 */
package org.dentary.ledger;
