/**
 * How readers agree: with each other on jaws drawn by lot, with the reference panel, with known ages; jaws that somebody chose
 * are kept apart.
 *
 * <p>It decides nothing about an animal's age. The arithmetic is {@link org.dentary.statistics.agreement.Agreement}'s.
 *
 * <p>Start reading at {@link org.dentary.jaw.agreement.ReaderAgreementService}.
 */
package org.dentary.jaw.agreement;
