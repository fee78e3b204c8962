/**
 * Boxes on their way to a laboratory: what is packed, when it left, what came back and what arrived. What may go is judged in
 * {@code packing}, the papers are in {@code manifest}, and what is late in {@code outstanding}; custody's events are held
 * only through {@code custody}, and no result is known here. Start reading at {@link
 * org.dentary.submission.SubmissionService}.
 */
package org.dentary.submission;
