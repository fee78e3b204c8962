/** How many tests a laboratory reported, to hold its invoice against; no prices and no outcomes. Start at TallyService. */
package org.dentary.result.tally;
