/**
 * What happens when a released word is replaced by another: who had the earlier one, and every try to tell them. It derives
 * and releases nothing, and telling the person who brought the animal stays with the notifications. Start reading at
 * {@link org.dentary.result.correction.CorrectionService}.
 */
package org.dentary.result.correction;
