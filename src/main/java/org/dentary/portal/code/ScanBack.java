package org.dentary.portal.code;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.List;
import org.dentary.kit.LabelView;

/**
 * Labels that were scanned together and are one kit.
 *
 * @param kit the kit
 * @param labels in the order scanned
 */
public record ScanBack(String kit, List<LabelView> labels) {
    /** Whether several scans were of one code: copies, or one label scanned twice; no scanner can tell which. */
    @JsonIgnore
    public boolean isOneLabelOnly() {
        return labels.size() > 1
                && labels.stream().map(LabelView::code).distinct().count() == 1;
    }
}
