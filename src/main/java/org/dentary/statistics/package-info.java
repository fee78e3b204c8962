/**
 * Pure functions over plain numbers: here the intervals of one proportion and its corrections, and the checks, quantiles and
 * roots that the packages below share; {@code comparison}, {@code standardisation}, {@code detection} and {@code agreement}
 * hold the rest. No framework, no clock, no database, and nothing here knows what a deer is; pages and JSON live in {@code
 * org.dentary.calculators}. Start reading at {@link org.dentary.statistics.Proportion}.
 *
 * <p>Conventions held by every type: a value that cannot be computed is {@code null} and a sentence in {@code warnings} says why; a
 * value outside its domain throws {@link org.dentary.statistics.OutOfDomain}; an unbounded limit is
 * {@link Double#POSITIVE_INFINITY}; a confidence level is a fraction in (0, 1). Citations were checked against public text where
 * possible; page numbers of the older papers are from memory.
 */
package org.dentary.statistics;
