/**
 * First answers on a data cut, stored and served from there for ever. How an answer is computed is said by each report that
 * implements {@link org.dentary.prevalence.answer.StoredReport}. Start reading at {@link
 * org.dentary.prevalence.answer.StoredAnswerService}.
 */
package org.dentary.prevalence.answer;
