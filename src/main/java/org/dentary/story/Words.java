package org.dentary.story;

import io.quarkus.qute.TemplateExtension;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/** How pages say codes and times. */
@TemplateExtension
public final class Words {
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("MMM d, uuuu, HH:mm z", Locale.US);

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("MMM d, uuuu", Locale.US);

    private static final BigDecimal A_DAY = BigDecimal.valueOf(24);
    private static final BigDecimal THREE_DAYS = BigDecimal.valueOf(72);

    private Words() {}

    /** A coded value as people say it: {@code HUNTER_HARVEST} is "Hunter harvest". */
    public static String asWords(String code) {
        if (code == null || code.isEmpty()) {
            return "";
        }
        String words = code.replace("RE_ATTRIBUTION", "RE-ATTRIBUTION")
                .replace('_', ' ')
                .toLowerCase(Locale.ROOT);
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }

    /** A tissue with its side: {@code LEFT} and {@code MEDIAL_RETROPHARYNGEAL_NODE} are "Left medial retropharyngeal node". */
    public static String asTissue(String tissue, String side) {
        return side == null || side.isEmpty() || side.equals("NONE") ? asWords(tissue) : asWords(side + "_" + tissue);
    }

    /** A kit as it is printed, 4-4. */
    public static String asKit(String kit) {
        return kit.length() == 8 ? kit.substring(0, 4) + "-" + kit.substring(4) : kit;
    }

    /** A label code as it is printed, 4-4-2. */
    public static String asLabel(String code) {
        return code.length() == 10 ? code.substring(0, 4) + "-" + code.substring(4, 8) + "-" + code.substring(8) : code;
    }

    /** A moment on the clock of a time zone, to the minute, with the zone. */
    public static String inZone(Instant at, String zone) {
        return MOMENT.withZone(ZoneId.of(zone)).format(at);
    }

    /** A day: "Nov 25, 2026". */
    public static String asDay(LocalDate day) {
        return DAY.format(day);
    }

    /** A number with its thousands apart: "9,201". */
    public static String asCount(Number number) {
        return String.format(Locale.US, "%,d", number.longValue());
    }

    /** Hours as people say them: less than one, to the tenth for three days, then in whole days. */
    public static String asAge(BigDecimal hours) {
        if (hours.compareTo(BigDecimal.ONE) < 0) {
            return "less than an hour";
        }
        return hours.compareTo(THREE_DAYS) <= 0
                ? hours.toPlainString() + " hours"
                : hours.divide(A_DAY, 0, RoundingMode.DOWN).toPlainString() + " days";
    }

    /** Label codes apart by spaces, each as it is printed. */
    public static String asLabels(String codes) {
        return Arrays.stream(codes.split(" ")).map(Words::asLabel).collect(Collectors.joining(", "));
    }
}
