/**
 * The room the house leads to: how common a disease is by age class, sex and place, counted from the line list with {@code
 * statistics}. What is asked stands in {@code question}, how it is laid out in {@code table}, and every other report, paper
 * and cut in a package of its own beside them; no outcome and no age is derived here. Start reading at {@link
 * org.dentary.prevalence.PrevalenceService}.
 */
package org.dentary.prevalence;
