/**
 * What does not add up between what was said and what was counted: short, over, damaged, wrong, each with an owner and a
 * day. Start reading at {@link org.dentary.custody.discrepancy.DiscrepancyService}.
 */
package org.dentary.custody.discrepancy;
