/**
 * What the sampling so far can rule out: by management unit the chance of having found the disease at the design
 * prevalence, what that says over seasons, and how many more of which class reach the plan's target. It counts by the
 * scope and steps of prevalence and computes with {@code statistics}; it compares no groups and estimates no prevalence.
 * Start reading at {@link org.dentary.prevalence.detection.ChanceService}.
 */
package org.dentary.prevalence.detection;
