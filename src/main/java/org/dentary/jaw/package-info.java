/**
 * Ageing a deer from its lower jaw: the key, the contradictions a reading can hold, the drawings and the printed key.
 *
 * <p>It does not know whose jaw it is: animals, people and the line list are told a class in plain values, and an age never
 * rests on antlers or size.
 *
 * <p>Start at {@link org.dentary.jaw.JawKey}, then read {@link org.dentary.jaw.JawRules} like the table it is.
 */
package org.dentary.jaw;
