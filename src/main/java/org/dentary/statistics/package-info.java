/**
 * Pure functions over plain numbers: intervals, comparisons, standardisation, detection, agreement, smoothing. No framework, no clock,
 * no database, and nothing here knows what a deer is; pages and JSON live in {@code org.dentary.calculators}.
 *
 * <p>Conventions held by every type: a value that cannot be computed is {@code null} and a sentence in {@code warnings} says why; a
 * value outside its domain throws {@link org.dentary.statistics.OutOfDomain}; an unbounded limit is
 * {@link Double#POSITIVE_INFINITY}; a confidence level is a fraction in (0, 1). Citations were checked against public text where
 * possible; page numbers of the older papers are from memory.
 *
 * <p>Start reading at {@link org.dentary.statistics.Proportion}.
 */
package org.dentary.statistics;
