package org.dentary.animal;

import java.time.Instant;

/**
 * One linking or unlinking of two kits.
 *
 * @param sameAs the kit that counts; null where the link was undone
 * @param byActor who said so
 */
public record LinkView(String kit, String sameAs, String reason, String evidence, String byActor, Instant at) {}
