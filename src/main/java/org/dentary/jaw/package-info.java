/**
 * Ageing a deer from its lower jaw: the key, the contradictions a reading can hold, readings as kept and the age that stands.
 *
 * <p>It does not know whose jaw it is: animals, people and the line list are told a class in plain values, and an age never
 * rests on antlers or size.
 *
 * <p>Start reading at {@link org.dentary.jaw.key.JawKey}, then read {@link org.dentary.jaw.key.JawRules} like the table it is; what is kept
 * begins at {@link org.dentary.jaw.JawReadingService}. Page and print of the key, drawings, photos, the queue, practice and
 * readers' agreement have packages of their own.
 */
package org.dentary.jaw;
