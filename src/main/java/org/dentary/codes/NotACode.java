package org.dentary.codes;

import java.util.List;

/**
 * The refusal of a string that is no code, in words that a person with the label in hand can act on.
 *
 * <p>Positions count the characters of the code from 1, without spaces and hyphens.
 */
public final class NotACode extends IllegalArgumentException {

    private static final long serialVersionUID = 1L;

    private final String given;
    private final int position;
    private final String character;
    private final String reason;
    private final transient List<Slip> slips;

    NotACode(String given, int position, String character, String reason, List<Slip> slips) {
        super("\"" + TypedText.shown(given) + "\" is no code: " + reason);
        this.given = TypedText.shown(given);
        this.position = position;
        this.character = character;
        this.reason = reason;
        this.slips = List.copyOf(slips);
    }

    NotACode(String given, int position, String character, String reason) {
        this(given, position, character, reason, List.of());
    }

    /** What was typed, without control characters, cut to 40 characters. */
    public String given() {
        return given;
    }

    /** The position of the character that looks wrong, from 1; 0 where no single one can be named. */
    public int position() {
        return position;
    }

    /** The character that looks wrong, empty where no single one can be named. */
    public String character() {
        return character;
    }

    /** What is wrong and what to do, a sentence for the screen. */
    public String reason() {
        return reason;
    }

    /** The slips of eye or finger that would explain a failed check, likeliest first; at most three, often none. */
    public List<Slip> slips() {
        return slips == null ? List.of() : slips;
    }
}
