package org.dentary.story;

import java.time.Instant;

/**
 * One thing that happened to the animal or its tissue.
 *
 * @param at when it happened
 * @param what a stable word, such as {@code TAKEN_IN}, {@code JAW_READ} or a custody event's kind
 * @param subject label code or other name of what it happened to; null for the animal
 * @param byActor who did it
 * @param words more about it, or null
 */
public record Happening(Instant at, String what, String subject, String byActor, String words) {}
