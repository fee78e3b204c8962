/**
 * Sexes, age classes and seasons held against each other, each result a sentence with its numbers and limits. It counts
 * nothing itself: the animals are those of {@link org.dentary.prevalence.PrevalenceService}, the arithmetic is that of
 * {@code statistics}. Start reading at {@link org.dentary.prevalence.comparison.ComparisonService}.
 */
package org.dentary.prevalence.comparison;
