/**
 * What a season is set up with: diseases, species, regions, seasons, management units, stations, laboratories and what
 * they accept, and test methods. The plan's settings stand in {@code setting}, a season's opening and closing in {@code
 * season}; none of them knows a person, a label or an animal. Start reading at {@link org.dentary.plan.PlanService}.
 */
package org.dentary.plan;
