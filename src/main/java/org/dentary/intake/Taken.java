package org.dentary.intake;

import java.util.List;

/**
 * What a write did.
 *
 * @param kit the kit it went to
 * @param isNew whether the thing was not there before
 * @param version today's version of the thing
 * @param warnings what is allowed and worth a second look
 */
public record Taken(String kit, boolean isNew, int version, List<String> warnings) {
    public Taken {
        warnings = List.copyOf(warnings);
    }
}
