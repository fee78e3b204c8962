/**
 * The key for people: the exam page, one question a screen, and the printed page, both from the key's own questions and drawings.
 *
 * <p>It answers nothing itself and stores nothing; an exam lives in its address.
 *
 * <p>Start reading at {@link org.dentary.jaw.exam.JawExam}, or at {@code JawKeySheet} for the print.
 */
package org.dentary.jaw.exam;
