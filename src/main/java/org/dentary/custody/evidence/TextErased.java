package org.dentary.custody.evidence;

import java.util.UUID;

/**
 * That a text of an entry was erased, in the same transaction: whoever keeps a copy of it takes that away.
 *
 * @param field one of {@link ErasedText#FIELDS}
 * @param act id that the entries of the act share, such as a submission's; or null
 */
public record TextErased(String field, UUID act) {}
