package org.dentary.platform;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoField;
import java.time.temporal.TemporalAccessor;
import java.util.function.Function;
import java.util.regex.Pattern;

/**
 * Days and times as people and programs write them: ISO 8601 with a year of four digits, from 1601 to 2999. Beyond those
 * years a date is a slip of the pen, and calendars, time zones and the database no longer agree.
 */
public final class CalendarText {
    private static final int FIRST_YEAR = 1601;
    private static final int LAST_YEAR = 2999;
    private static final String DATE = "\\d{4}-\\d\\d-\\d\\d";
    private static final String CLOCK = "T\\d\\d:\\d\\d(:\\d\\d(\\.\\d{1,9})?)?";
    private static final Pattern DAY = Pattern.compile(DATE);
    private static final Pattern LOCAL = Pattern.compile(DATE + CLOCK);
    /** RFC 3339, section 5.6, with the seconds that people leave out. */
    private static final Pattern TIME = Pattern.compile(DATE + CLOCK + "(Z|[+-]\\d\\d:\\d\\d)");

    private CalendarText() {}

    /**
     * A day such as 2026-11-14.
     *
     * @throws DateTimeParseException if the text is none
     */
    public static LocalDate day(CharSequence text) {
        return read(DAY, LocalDate::parse, text);
    }

    /**
     * A time on the clock of a place, such as 2026-11-14T07:30.
     *
     * @throws DateTimeParseException if the text is none
     */
    public static LocalDateTime local(CharSequence text) {
        return read(LOCAL, LocalDateTime::parse, text);
    }

    /**
     * A time with offset such as 2026-11-14T07:30:00-06:00.
     *
     * @throws DateTimeParseException if the text is none
     */
    public static OffsetDateTime time(CharSequence text) {
        return read(TIME, OffsetDateTime::parse, text);
    }

    private static <T extends TemporalAccessor> T read(
            Pattern form, Function<CharSequence, T> reading, CharSequence text) {
        if (!form.matcher(text).matches()) {
            throw new DateTimeParseException("not of the form expected", text, 0);
        }
        T moment = reading.apply(text);
        int year = moment.get(ChronoField.YEAR);
        if (year < FIRST_YEAR || year > LAST_YEAR) {
            throw new DateTimeParseException("the year is not from " + FIRST_YEAR + " to " + LAST_YEAR, text, 0);
        }
        return moment;
    }
}
