package org.dentary.codes;

import java.util.Map;

/** Words for a character that no code holds, with what it was perhaps read for. */
final class Foreign {

    /** What a letter that codes do without looks like; common practice, no source. */
    private static final Map<Character, String> READ_FOR =
            Map.of('B', "8", 'E', "F or 3", 'L', "1", 'S', "5", 'U', "V");

    private Foreign() {}

    static NotACode refuse(String text, String given, int index) {
        char foreign = text.charAt(index);
        String perhaps = READ_FOR.getOrDefault(foreign, "");
        String character = text.substring(index, text.offsetByCodePoints(index, 1));
        String reason = "character %d is %s, which codes do not use".formatted(index + 1, character)
                + (perhaps.isEmpty() ? "" : "; is it perhaps " + perhaps + "?")
                + (perhaps.isEmpty() ? ". Scan or type it again." : " Scan it or look at it again.");
        return new NotACode(given, index + 1, character, reason);
    }
}
