/** The chart of a prevalence report, drawn once for page, document and picture. */
package org.dentary.prevalence.chart;
