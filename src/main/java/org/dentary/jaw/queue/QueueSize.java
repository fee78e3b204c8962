package org.dentary.jaw.queue;

/**
 * How many jaws wait for a task.
 *
 * @param task {@code READ}, {@code READ_AGAIN} or {@code DECIDE}
 * @param probable those that wait only because a probable age needs a second reader, which is the plan's to say
 */
public record QueueSize(String task, Integer jaws, Integer probable) {}
