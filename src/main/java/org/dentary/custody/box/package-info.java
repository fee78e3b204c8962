/**
 * A box at the bench: what is in it, where it is, who has it, filled and emptied by scan. The rules of putting in and
 * taking out are {@link org.dentary.custody.BoxService}'s. Start reading at {@link org.dentary.custody.box.BoxPages}.
 */
package org.dentary.custody.box;
