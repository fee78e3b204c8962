package org.dentary.result.outcome;

/**
 * A specimen or piece of an animal as the outcome rules see it.
 *
 * @param parent what it was cut from, or null
 * @param archived kept without an order: it never holds an outcome
 * @param orders tests ordered: submissions that it is on, other than those that ended without it
 * @param reports orders that were answered by a final finding, a cancellation or the loss of the specimen
 * @param node whether it is a lymph node
 * @param obex whether it is obex
 */
record TissueFact(String code, String parent, boolean archived, int orders, int reports, boolean node, boolean obex) {}
