/**
 * Telling people what was released of the animal they brought: the work list with every try, callers without a stub, and
 * letters. It decides no outcome and knows nothing unreleased. Start reading at
 * {@link org.dentary.result.notification.NotificationService}.
 */
package org.dentary.result.notification;
