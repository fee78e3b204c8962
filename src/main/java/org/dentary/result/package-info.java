/**
 * What the laboratories found: findings by hand and by file, the outcome they give each animal, and its release. It does
 * not pack or ship, and it counts nothing. Start reading at {@link org.dentary.result.outcome.OutcomeRules}.
 */
package org.dentary.result;
