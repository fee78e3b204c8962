/**
 * What the findings say of an animal and a disease, by the plan's rules, with its reasons. It keeps no finding and releases
 * nothing: the outcome goes to the animal's line. Start reading at {@link org.dentary.result.outcome.OutcomeRules}, then
 * {@link org.dentary.result.outcome.OutcomeService}.
 */
package org.dentary.result.outcome;
