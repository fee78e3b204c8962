package org.dentary.result.outcome;

import java.util.List;

/**
 * Animals whose outcomes were just derived and written into their lines, in the same transaction.
 *
 * @param kits each of the animals' kits
 * @param cause what happened, in UPPER_SNAKE, as the lines have it
 */
public record OutcomesDerived(List<String> kits, String cause) {
    public OutcomesDerived {
        kits = List.copyOf(kits);
    }
}
