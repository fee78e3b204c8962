/**
 * What a report is asked: which season or cut, which animals count and where the others leave, by what they are broken down,
 * and which seasons stand beside. Reading the lines and computing is done by those who answer. Start reading at {@link
 * org.dentary.prevalence.question.ReportQuestion}.
 */
package org.dentary.prevalence.question;
