package org.dentary.result.outcome;

/**
 * What the plan decides about outcomes in the animal's unit.
 *
 * @param screeningAlone a final screening detection counts without confirmation
 * @param poolPasses a pool not detected passes to its members
 */
record PlanFacts(boolean screeningAlone, boolean poolPasses) {}
