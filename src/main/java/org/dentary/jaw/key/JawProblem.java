package org.dentary.jaw.key;

/**
 * Why an observation cannot be put to the key at all.
 *
 * @param field path of the field in the request
 * @param rule code of the rule
 * @param message what was given, what is allowed, what to do
 */
public record JawProblem(String field, String rule, String message) {}
