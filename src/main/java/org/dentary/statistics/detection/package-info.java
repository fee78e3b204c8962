/**
 * What a sample can rule out: the chance that it would have found a disease at a design prevalence, how many more animals it
 * takes, and what several rounds or weighted groups add up to. How common a disease that was found is, stands one package up.
 * Start reading at {@link org.dentary.statistics.detection.Detection}.
 */
package org.dentary.statistics.detection;
