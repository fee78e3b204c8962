/**
 * Tissue: what was taken from which animal under which label, the pieces cut from it, how it has been kept, and the
 * putting right of swapped labels. Who holds it and what a laboratory found in it is the business of the rooms to the
 * right. Start reading at {@link org.dentary.specimen.SpecimenService}, then {@link
 * org.dentary.specimen.ReAttributionService}.
 */
package org.dentary.specimen;
