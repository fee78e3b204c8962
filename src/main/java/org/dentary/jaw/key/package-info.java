/**
 * The jaw key: what is seen on a lower jaw, the walk that ends at an age class, and the contradictions that speak against it.
 * It is pure and stores nothing; readings of an animal are kept in {@code jaw}. Start reading at {@link
 * org.dentary.jaw.key.JawKey}.
 */
package org.dentary.jaw.key;
