package org.dentary.custody.chain;

/**
 * The answer to a repeatable write.
 *
 * @param view as it stands now
 * @param created whether it is new
 */
public record Stored<V>(V view, boolean created) {}
