/**
 * How many tests a laboratory reported, to hold its invoice against. It counts findings and knows no price and no outcome.
 * Start reading at {@link org.dentary.result.tally.TallyService}.
 */
package org.dentary.result.tally;
