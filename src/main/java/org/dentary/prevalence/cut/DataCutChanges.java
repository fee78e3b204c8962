package org.dentary.prevalence.cut;

import com.fasterxml.jackson.annotation.JsonIgnore;
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
        DataCutView from, DataCutView to, Map<ChangeKind, Long> counts, String summary, List<DataCutChange> changes) {
    /** More rows than a page can show and people read. */
    private static final int FIRST = 200;

    /** Those that a page shows. */
    @JsonIgnore
    public List<DataCutChange> getFirst() {
        return changes.subList(0, Math.min(FIRST, changes.size()));
    }
}
