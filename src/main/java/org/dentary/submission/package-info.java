/**
 * Boxes on their way to a laboratory: what may go, what is packed, when it left, what arrived, and what the papers say.
 * It holds custody's events only through {@code custody} and knows no result. Start reading at {@link
 * org.dentary.submission.SubmissionService}.
 */
package org.dentary.submission;
