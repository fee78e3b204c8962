/**
 * Contacts and exact points: encrypted with a key of their own, found by callers through a keyed index, erasable. Nothing of
 * them reaches a list, a report or the ledger. Start reading at {@link org.dentary.animal.vault.ContactService}.
 */
package org.dentary.animal.vault;
