/**
 * What a season is set up with: diseases, species, regions, seasons, management units, stations, laboratories and what
 * they accept, test methods, and the plan's settings. It knows no person, label or animal. Start reading at {@link
 * org.dentary.plan.PlanService}; the settings stand in {@link org.dentary.plan.PlanSetting}.
 */
package org.dentary.plan;
