package org.dentary.story;

import io.quarkus.qute.TemplateExtension;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** How pages say codes and times. */
@TemplateExtension
public final class Words {
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("MMM d, uuuu, HH:mm z", Locale.US);

    private static final DateTimeFormatter ZONE = DateTimeFormatter.ofPattern("zzz", Locale.US);

    private Words() {}

    /** A coded value as people say it: {@code HUNTER_HARVEST} is "Hunter harvest". */
    public static String asWords(String code) {
        if (code == null || code.isEmpty()) {
            return "";
        }
        String words = code.replace('_', ' ').toLowerCase(Locale.ROOT);
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

    /** The short name of a time zone at a moment, such as CST. */
    public static String zoneOf(Instant at, String zone) {
        return ZONE.withZone(ZoneId.of(zone)).format(at);
    }
}
