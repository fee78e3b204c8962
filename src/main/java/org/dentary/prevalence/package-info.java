/**
 * The room the house leads to: the line list as it leaves, data cuts, and how common a disease is by age class, sex and
 * place. It reads the line list alone and computes with {@code statistics}; it derives no outcome and no age. Start
 * reading at {@link org.dentary.prevalence.PrevalenceService}.
 */
package org.dentary.prevalence;
