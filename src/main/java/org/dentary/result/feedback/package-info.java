/**
 * How often tissue could not be read, by who took it, where, which tissue, how it was kept and how soon it was fixed, so
 * that the next is better. Reasons of paperwork never count. It shows nothing of an animal whose outcome is not released.
 * Start reading at {@link org.dentary.result.feedback.FeedbackService}.
 */
package org.dentary.result.feedback;
