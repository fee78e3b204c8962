/** Data cuts: the line list of a season held still, what changed between two of them, and what was known when one was made. */
package org.dentary.prevalence.cut;
