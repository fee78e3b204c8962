/**
 * Sets of test performance: published sensitivity and specificity of tests on tissues, kept as data, and which of them may be
 * used on which animals. What is computed with them is told by {@code prevalence.truth} and {@code prevalence.detection}; the
 * coordinator brings them in through {@code setup}. Start reading at
 * {@link org.dentary.prevalence.performance.PerformanceSets}.
 */
package org.dentary.prevalence.performance;
