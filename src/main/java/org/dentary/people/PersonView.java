package org.dentary.people;

/**
 * A person on the roster.
 *
 * @param organisation whom the person works for, or null
 * @param active whether the person still takes part
 */
public record PersonView(String code, String name, String organisation, boolean active) {}
