package org.dentary.portal;

/**
 * What a problem code means.
 *
 * @param code the code in UPPER_SNAKE
 * @param meaning what happened, in plain words
 * @param remedy what to do
 */
public record Explanation(String code, String meaning, String remedy) {}
