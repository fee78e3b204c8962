/**
 * A box at the bench: what is in it, where it is, who has it, filled and emptied by scan, over the API and on its page.
 * Start reading at {@link org.dentary.custody.box.BoxService}, then {@link org.dentary.custody.box.BoxPages}.
 */
package org.dentary.custody.box;
