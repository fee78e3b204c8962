/**
 * Writes that can be repeated: the digest of every accepted request, versions as entity tags. It does not know what a
 * request means. Start reading at {@link org.dentary.platform.request.RepeatableRequests}.
 */
package org.dentary.platform.request;
