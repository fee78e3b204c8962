/**
 * Who is to be told what was released, by when and how, and each try to reach them. The letters and their wordings stand in
 * {@code letter}, those who call without a stub in {@code caller}; what is released is decided in {@code
 * result.release}, and nothing unreleased is known here. Start reading at {@link org.dentary.result.notification.NotificationService}.
 */
package org.dentary.result.notification;
