package org.dentary.custody.identity;

import java.util.List;

/**
 * Fired in the transaction that asks for, grants or refuses an exception: what is found in the specimen and its pieces
 * counts otherwise from now on.
 *
 * @param kits animals concerned
 * @param cause in UPPER_SNAKE
 */
public record IdentitySettled(List<String> kits, String cause) {}
