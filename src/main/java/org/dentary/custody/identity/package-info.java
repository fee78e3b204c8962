/**
 * Identity exceptions: a specimen whose label does not match at receipt and that cannot be collected again, vouched for
 * by one person and granted or refused by another. What does not add up in a count is the business of {@code
 * custody.discrepancy}, tissue of another animal that of the specimen's re-attribution. Start reading at {@link
 * org.dentary.custody.identity.IdentityExceptionService}.
 */
package org.dentary.custody.identity;
