package org.dentary.ledger;

import java.time.Instant;

/**
 * Where an event lies under a checkpoint.
 *
 * @param checkpoint its number
 * @param index the leaf's place in its tree, from 0
 * @param hash the event's hash as it was sealed
 * @param madeAt when the checkpoint was made
 */
public record Seal(long checkpoint, int index, String hash, Instant madeAt) {}
