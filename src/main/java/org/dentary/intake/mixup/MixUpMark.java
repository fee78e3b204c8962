package org.dentary.intake.mixup;

import java.time.Instant;
import java.time.format.DateTimeParseException;
import org.dentary.platform.problem.InvalidInput;

/**
 * Where a page of suspicions ended: after this one, or, with empty texts, after everything from that moment on.
 *
 * @param other empty where the sign is about one kit
 */
record MixUpMark(Instant at, String sign, String kit, String other) {
    /** Before the newest. */
    static final MixUpMark START = new MixUpMark(Instant.parse("9999-12-31T00:00:00Z"), "", "", "");

    static MixUpMark from(Instant floor) {
        return new MixUpMark(floor, "", "", "");
    }

    static MixUpMark of(MixUp last) {
        return new MixUpMark(last.at(), last.sign().name(), last.kit(), last.other() == null ? "" : last.other());
    }

    /**
     * @param typed what {@link #toString} wrote, or null for the beginning
     * @throws InvalidInput for anything else
     */
    static MixUpMark parse(String typed) {
        if (typed == null || typed.isBlank()) {
            return START;
        }
        String[] parts = typed.split("_", -1);
        try {
            if (parts.length == 4) {
                return new MixUpMark(Instant.parse(parts[0]), parts[1].replace('-', '_'), parts[2], parts[3]);
            }
        } catch (DateTimeParseException fault) {
            throw damaged(typed);
        }
        throw damaged(typed);
    }

    private static InvalidInput damaged(String typed) {
        return InvalidInput.field(
                "after", "INVALID_VALUE", "'" + typed + "' is no mark of a page; take it whole from the Link of one");
    }

    @Override
    public String toString() {
        return String.join("_", at.toString(), sign.replace('_', '-'), kit, other);
    }
}
