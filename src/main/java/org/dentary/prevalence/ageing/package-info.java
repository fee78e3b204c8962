/**
 * Ageing error as a what-if: how the age pattern of a report would change if jaws were misread as a stated, cited or counted
 * matrix says. It counts no animal itself and claims no interval: the animals are those of {@link
 * org.dentary.prevalence.PrevalenceService}, the arithmetic is {@link org.dentary.statistics.Misclassification}. Start reading
 * at {@link org.dentary.prevalence.ageing.AgeingService}.
 */
package org.dentary.prevalence.ageing;
