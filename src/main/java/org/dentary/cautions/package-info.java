/**
 * Cautions: short texts that each end by naming whose word stands above them, shown at the step where they can prevent
 * harm, kept as versions that a named person reviews. It does not know the work itself. Start reading at {@link
 * org.dentary.cautions.CautionService}.
 */
package org.dentary.cautions;
