/**
 * The queue of jaws: to read, to read again by somebody else, to decide.
 *
 * <p>It tells what waits and why, never a class, so that a second reader learns nothing here.
 *
 * <p>Start reading at {@link org.dentary.jaw.queue.JawQueueService}; when a jaw waits is said in SQL in {@code JawQueueQueries}.
 */
package org.dentary.jaw.queue;
