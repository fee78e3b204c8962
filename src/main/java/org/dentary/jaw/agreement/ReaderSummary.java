package org.dentary.jaw.agreement;

import org.dentary.statistics.agreement.Agreement;

/**
 * One reader among all.
 *
 * @param readings readings of teeth ever given
 */
public record ReaderSummary(
        String person, String name, int readings, Agreement drawn, Agreement panel, Agreement knownAge) {}
