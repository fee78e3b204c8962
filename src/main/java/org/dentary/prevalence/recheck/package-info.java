/**
 * Stored answers computed again: after an upgrade by itself, at any time by hand. It tells every number that moved and
 * changes none: what was answered stays answered. Start reading at
 * {@link org.dentary.prevalence.recheck.RecheckService}.
 */
package org.dentary.prevalence.recheck;
