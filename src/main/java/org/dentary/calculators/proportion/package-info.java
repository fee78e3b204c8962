/**
 * How common is it: one proportion, the true prevalence behind it, a prevalence standardised to a herd, small areas smoothed. Start
 * reading at {@link org.dentary.calculators.proportion.ProportionResource}.
 */
package org.dentary.calculators.proportion;
