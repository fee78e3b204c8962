package org.dentary.result.imports.file;

/**
 * A fault in one line of a file.
 *
 * @param line line of the file; 0 where the whole file is at fault
 * @param field column
 * @param rule stable name
 * @param message what was given, what is allowed, what to do
 */
public record RowProblem(int line, String field, String rule, String message) {}
