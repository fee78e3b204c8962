package org.dentary.prevalence.document;

/** A line of the table of what was asked. */
public record Fact(String what, String value) {}
