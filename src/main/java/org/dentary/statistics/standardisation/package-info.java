/**
 * Proportions weighted to one standard population, with their intervals, and the difference of two of them. Which population
 * is the standard, and which strata there are, the caller says. Start reading at {@link
 * org.dentary.statistics.standardisation.Standardised}.
 */
package org.dentary.statistics.standardisation;
