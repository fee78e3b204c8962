/**
 * What calls have in common: writes that can be repeated (the digest of every accepted request, versions as entity tags),
 * addresses judged before they are followed, the forms of answers. It does not know what a
 * request means. Start reading at {@link org.dentary.platform.request.RepeatableRequests}.
 */
package org.dentary.platform.request;
