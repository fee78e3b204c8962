/**
 * The plan's settings: each with its meaning, unit, default and what is allowed, valid everywhere or for a season, region or
 * unit, the most specific first. What a setting does is said where it is read. Start reading at {@link
 * org.dentary.plan.setting.PlanSetting}.
 */
package org.dentary.plan.setting;
