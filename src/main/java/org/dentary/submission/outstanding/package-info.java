/**
 * What waits to be sent, what is overdue at a laboratory, and how long laboratories take. Who is called about it, and what a
 * result says, is no matter of this package. Start reading at {@link
 * org.dentary.submission.outstanding.OutstandingLists}.
 */
package org.dentary.submission.outstanding;
