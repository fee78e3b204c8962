/**
 * What can be ruled out: how many to test, what a sample can be expected to show, evidence added up over years, risk-weighted points.
 * Start reading at {@link org.dentary.calculators.detection.DetectionResource}.
 */
package org.dentary.calculators.detection;
