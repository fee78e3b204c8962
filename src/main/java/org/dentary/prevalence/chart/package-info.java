/**
 * Pictures of reports: their inks and frame, SVG and PNG, and the chart of a prevalence report, drawn once for page, document
 * and picture. What other reports draw stands with them. Start reading at {@link
 * org.dentary.prevalence.chart.PrevalenceChart}.
 */
package org.dentary.prevalence.chart;
