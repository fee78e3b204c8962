/**
 * Sheets of labels as PDF: the stocks, how a label is laid out and drawn, the cover and the page to align the printer by.
 * Which codes are printed, and for whom, belongs to {@code kit}. Start reading at {@link
 * org.dentary.codes.sheet.LabelSheet}.
 */
package org.dentary.codes.sheet;
