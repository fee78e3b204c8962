/**
 * A season's state: draft, open or closed, and what must be there before it opens. Its days and name are the plan's, and
 * read as {@link org.dentary.plan.SeasonView}. Start reading at {@link org.dentary.plan.season.SeasonStateService}.
 */
package org.dentary.plan.season;
