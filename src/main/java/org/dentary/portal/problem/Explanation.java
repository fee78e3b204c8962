package org.dentary.portal.problem;

/**
 * What a problem code means.
 *
 * @param room the room that answers it, by its package
 * @param code the code in UPPER_SNAKE
 * @param meaning what happened, in plain words
 * @param remedy what to do
 */
public record Explanation(String room, String code, String meaning, String remedy) {}
