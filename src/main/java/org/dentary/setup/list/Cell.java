package org.dentary.setup.list;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.function.BiPredicate;

/**
 * What a column's cells may hold and how they travel to the database and back as text.
 *
 * @param words the allowed values as a sentence part
 * @param write SQL from the text {@code %s} to the column's value
 * @param read SQL from the column {@code %s} to text, never null
 * @param allows whether a cell that is not empty is allowed
 * @param from list whose codes it holds, or null
 */
public record Cell(String words, String write, String read, BiPredicate<String, Known> allows, SetUpList from) {
    /** How a password that was hashed on arrival begins. */
    public static final String HASHED = "$2";

    private static final String FROM_TEXT = "nullif(%s, '')";
    private static final String TO_TEXT = "coalesce(%s, '')";
    private static final String TO_NUMBER = "cast(nullif(%s, '') as numeric)";
    private static final String FROM_LIST = "string_to_array(%s, ' ')";
    private static final String TO_LIST = "coalesce(array_to_string(%s, ' '), '')";

    static final Cell CODE = text("a code of 1 to 40 capital letters, digits, _ and -", "[A-Z0-9][A-Z0-9_-]{0,39}");
    static final Cell SIGN_IN_NAME =
            text("a sign-in name of 1 to 40 small letters, digits, dots, _ and -", "[a-z0-9][a-z0-9._-]{0,39}");
    static final Cell NAME = text("text of up to 200 characters on one line", "[^\\r\\n]{1,200}");
    static final Cell LONG_TEXT = text("text of up to 4,000 characters", "(?s).{1,4000}");
    static final Cell EDITION = text("a whole number from 1 to 9999", "[1-9]\\d{0,3}");
    static final Cell DAY = new Cell(
            "a date as year-month-day, such as 2026-09-01",
            "cast(nullif(%s, '') as date)",
            "coalesce(to_char(%s, 'YYYY-MM-DD'), '')",
            (value, known) -> isDay(value));
    static final Cell YES_OR_NO = new Cell(
            "yes or no",
            "(%s = 'yes')",
            "case when %s then 'yes' else 'no' end",
            (value, known) -> value.equals("yes") || value.equals("no"));
    static final Cell ZONE = new Cell(
            "an IANA time zone, such as America/Chicago",
            FROM_TEXT,
            TO_TEXT,
            (value, known) ->
                    value.contains("/") && ZoneId.getAvailableZoneIds().contains(value));
    public static final Cell BOUNDARY = new Cell(
            "a GeoJSON Polygon or MultiPolygon (RFC 7946: longitude first, rings closed)",
            FROM_TEXT,
            TO_TEXT,
            (value, known) -> Boundary.fault(value).isEmpty());

    /** Never read back; the file's reader has put its hash in its place. */
    public static final Cell PASSWORD =
            new Cell("at least 8 characters", FROM_TEXT, "''", (value, known) -> value.startsWith(HASHED));

    /** Kept beside the stores, one row for each person. */
    public static final Cell STORE_PEOPLE = new Cell(
            "codes of the list persons, with a blank between two",
            FROM_LIST,
            "coalesce((select string_agg(a.person, ' ' order by a.person) from store_access a where a.store = store.code), '')",
            (value, known) -> each(value).stream().allMatch(code -> known.has(SetUpList.PERSONS, code)));

    Cell(String words, String write, String read, BiPredicate<String, Known> allows) {
        this(words, write, read, allows, null);
    }

    static Cell text(String words, String pattern) {
        return new Cell(words, FROM_TEXT, TO_TEXT, (value, known) -> value.matches(pattern));
    }

    static Cell wholeNumber(int least, int most) {
        return new Cell(
                "a whole number from " + least + " to " + most,
                "cast(nullif(%s, '') as int)",
                "coalesce(cast(%s as text), '')",
                (value, known) -> value.matches("\\d{1,6}")
                        && Integer.parseInt(value) >= least
                        && Integer.parseInt(value) <= most);
    }

    static Cell decimal(int least, int most) {
        return new Cell(
                "a number from " + least + " to " + most + " with up to 6 decimals",
                TO_NUMBER,
                "coalesce(cast(trim_scale(%s) as text), '')",
                (value, known) -> value.matches("\\d{1,6}(\\.\\d{1,6})?")
                        && Double.parseDouble(value) >= least
                        && Double.parseDouble(value) <= most);
    }

    /** Whether two allowed texts, either of which may be empty, mean the same value. */
    public boolean same(String one, String other) {
        return one.equals(other)
                || write.equals(TO_NUMBER)
                        && !one.isEmpty()
                        && !other.isEmpty()
                        && new BigDecimal(one).compareTo(new BigDecimal(other)) == 0;
    }

    static Cell oneOf(List<String> values) {
        return new Cell(
                "one of " + String.join(", ", values), FROM_TEXT, TO_TEXT, (value, known) -> values.contains(value));
    }

    static Cell severalOf(List<String> values) {
        return new Cell(
                "one or more of " + String.join(", ", values) + ", with a blank between two",
                FROM_LIST,
                TO_LIST,
                (value, known) -> each(value).stream().allMatch(values::contains));
    }

    /** As {@link #severalOf}, kept as one text. */
    static Cell wordsOf(List<String> values) {
        Cell several = severalOf(values);
        return new Cell(several.words(), FROM_TEXT, TO_TEXT, several.allows());
    }

    /** The code of something set up before. */
    static Cell in(SetUpList list) {
        return new Cell(
                "a code of the list " + list.path(),
                FROM_TEXT,
                TO_TEXT,
                (value, known) -> known.has(list, value),
                list);
    }

    static Cell severalIn(SetUpList list) {
        return new Cell(
                "codes of the list " + list.path() + ", with a blank between two",
                FROM_LIST,
                TO_LIST,
                (value, known) -> each(value).stream().allMatch(code -> known.has(list, code)),
                list);
    }

    static Cell allOrSeveralIn(SetUpList list) {
        Cell several = severalIn(list);
        return new Cell(
                several.words() + ", or * for all",
                FROM_LIST,
                TO_LIST,
                (value, known) -> value.equals("*") || several.allows().test(value, known),
                list);
    }

    static List<String> each(String value) {
        return Arrays.asList(value.split(" "));
    }

    private static boolean isDay(String value) {
        try {
            return value.length() == 10 && LocalDate.parse(value).getYear() > 1600;
        } catch (DateTimeException e) {
            return false;
        }
    }
}
