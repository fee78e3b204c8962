package org.dentary.specimen;

import java.util.Collection;
import java.util.List;

/**
 * Told inside the transaction in which the tissue of animals changed, or the season or unit whose rules judge it, and their
 * lines are open: whoever derives outcomes does so now.
 *
 * @param kits the animals
 * @param cause what happened, in UPPER_SNAKE
 */
public record SpecimensRecorded(List<String> kits, String cause) {
    public SpecimensRecorded(Collection<String> kits, String cause) {
        this(List.copyOf(kits), cause);
    }

    public SpecimensRecorded {
        kits = List.copyOf(kits);
    }
}
