package org.dentary.intake.mixup;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.dentary.story.Words;

/**
 * A suspected mix-up.
 *
 * @param kit one animal
 * @param other the other, or null where only one is known: scan it on the page
 * @param sign what makes it likely
 * @param detail the number, the codes or the rule that shows it
 * @param station where the first was taken in
 * @param diedOn of the first, or null
 * @param at when the sign came up
 * @param zone the station's
 * @param setAside why it was none and who said so, or null while it is open
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record MixUp(
        String kit,
        String other,
        Sign sign,
        String detail,
        String station,
        String stationName,
        LocalDate diedOn,
        Instant at,
        String zone,
        String setAside) {
    private static final Pattern CODE = Pattern.compile("\\b[0-9A-Z]{10}\\b");
    private static final Map<String, String> RULES = Map.of(
            "J11", "a milk tooth beside molars that are well worn",
            "J20", "a fawn's jaw with an adult's antlers, milk or fetus");

    /** The detail as people read it: codes as they are printed, rules and kinds of number in words; null of none. */
    public String told() {
        if (detail == null || detail.isBlank()) {
            return null;
        }
        return switch (sign) {
            case SAME_IDENTIFIER ->
                Arrays.stream(detail.split("; ")).map(MixUp::number).collect(Collectors.joining("; "));
            case JAW_OF_ANOTHER ->
                Arrays.stream(detail.split(" "))
                        .map(rule -> RULES.getOrDefault(rule, rule))
                        .collect(Collectors.joining("; "));
            default -> CODE.matcher(detail).replaceAll(code -> Words.asLabel(code.group()));
        };
    }

    private static String number(String typed) {
        int space = typed.indexOf(' ');
        return space < 0 ? typed : Words.asWords(typed.substring(0, space)) + typed.substring(space);
    }

    /** Where both are compared. */
    public String getHref() {
        return "/animals/" + kit + "/put-right" + (other == null ? "" : "?with=" + other);
    }
}
