package org.dentary.setup;

/**
 * One fault in one line of a file.
 *
 * @param line line of the file, the header being 1
 * @param field name of the column, or empty for the whole line
 * @param rule stable name of the rule
 * @param message what was given, what is allowed, what to do
 */
public record LineProblem(int line, String field, String rule, String message) {}
