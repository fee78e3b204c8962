/** Contacts and exact points: encrypted with a key of their own, found by callers through a keyed index, erasable. */
package org.dentary.animal.vault;
