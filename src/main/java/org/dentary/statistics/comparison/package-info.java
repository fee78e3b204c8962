/**
 * Two groups, several groups or ordered groups set against each other: differences, ratios, odds ratios, exact and stratified
 * tests, trend, and what many tests at once cost. Rates weighted to one standard population are {@code standardisation}'s.
 * Start reading at {@link org.dentary.statistics.comparison.TwoProportions}.
 */
package org.dentary.statistics.comparison;
