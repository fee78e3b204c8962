/**
 * The letters: their wordings, edition by edition and reviewed by a person, and the paper itself, made anew each time and
 * never stored. Who is to get one, and whether it was sent, is kept one package up. Start reading at {@link
 * org.dentary.result.notification.letter.LetterService}.
 */
package org.dentary.result.notification.letter;
