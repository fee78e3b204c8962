/**
 * Data cuts: the line list of a season held still, what changed between two of them, and what was known when one was made.
 * What is computed on a cut is asked as of the live lines ({@code prevalence.question}). Start reading at {@link
 * org.dentary.prevalence.cut.DataCutService}.
 */
package org.dentary.prevalence.cut;
