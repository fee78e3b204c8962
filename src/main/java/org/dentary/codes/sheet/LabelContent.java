package org.dentary.codes.sheet;

import java.util.List;
import org.dentary.codes.LabelCode;

/**
 * What one label says beside its symbols.
 *
 * @param code the label's code
 * @param lines short lines below code and part, such as the season and the station; what a stock has no room for is left
 *     out, and a line too long for the label is cut with an ellipsis
 */
public record LabelContent(LabelCode code, List<String> lines) {

    /** Takes the lines as they are. */
    public LabelContent {
        lines = List.copyOf(lines);
    }

    /** A label with the lines given. */
    public static LabelContent of(LabelCode code, String... lines) {
        return new LabelContent(code, List.of(lines));
    }
}
