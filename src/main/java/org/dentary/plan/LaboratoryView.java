package org.dentary.plan;

/**
 * A laboratory that tests.
 *
 * @param turnaroundDays days from dispatch to report that it promises, or null
 */
public record LaboratoryView(String code, String name, String address, String contact, Integer turnaroundDays) {}
