package org.dentary.prevalence.cut;

import java.util.List;
import java.util.Map;

/**
 * What changed from one cut to another.
 *
 * @param counts number of lines by kind of change
 * @param summary the same in words
 * @param changes by kit
 */
public record DataCutChanges(
        DataCutView from, DataCutView to, Map<ChangeKind, Long> counts, String summary, List<DataCutChange> changes) {}
