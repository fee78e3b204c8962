/**
 * Is it different: two proportions, strata pooled, a trend over ages, two readers of the same jaws. Start reading at
 * {@link org.dentary.calculators.comparison.ComparisonResource}.
 */
package org.dentary.calculators.comparison;
