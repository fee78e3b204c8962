package org.dentary.kit.print;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.dentary.codes.Part;
import org.dentary.codes.sheet.LabelRun;
import org.dentary.codes.sheet.LabelSheet;
import org.dentary.codes.sheet.LabelStock;
import org.dentary.codes.sheet.LabelStocks;
import org.dentary.platform.problem.InvalidInput;

/**
 * How labels are to be printed.
 *
 * @param stock what on
 * @param run from which label of the first sheet, shifted how far, how many of each
 */
public record Printing(LabelStock stock, LabelRun run) {
    /** The most identical labels of a part in one printing, as many as a block may have. */
    public static final int MOST_COPIES = 10;

    private static final Pattern PART_AND_NUMBER = Pattern.compile("([A-Z0-9_]+):([0-9]{1,2})");

    /**
     * As asked for in an address; how many of each is said by {@link #copies}.
     *
     * @throws InvalidInput naming the parameter, what was given and what is allowed
     */
    static Printing of(PrintParameters asked) {
        return of(asked.stock, asked.start, asked.offsetX, asked.offsetY);
    }

    /**
     * The same by single values.
     *
     * @param stock code of the stock
     * @param start first label to use, from 1
     * @param offsetX millimetres to the right, -10 to 10
     * @param offsetY millimetres down, -10 to 10
     */
    static Printing of(String stock, String start, String offsetX, String offsetY) {
        LabelStock found = stock(stock);
        int first = start.strip().matches("[0-9]{1,3}") ? Integer.parseInt(start.strip()) : 0;
        if (first < 1 || first > found.labelsOnAPage()) {
            throw InvalidInput.field(
                    "start",
                    "INVALID_VALUE",
                    found.labelsOnAPage() == 1
                            ? "'" + start + "' is no label of " + found.code() + ", a roll; give 1"
                            : "'" + start + "' is no label of a sheet of " + found.code() + "; give 1 to "
                                    + found.labelsOnAPage());
        }
        double right = millimetres("offsetX", offsetX);
        double down = millimetres("offsetY", offsetY);
        LabelSheet sheet = LabelSheet.on(found);
        requireOnPage("offsetX", right, sheet.lostBySide(right), found);
        requireOnPage("offsetY", down, sheet.lostByHeight(down), found);
        return new Printing(found, new LabelRun(first, Map.of(), right, down));
    }

    private static void requireOnPage(String name, double shift, double lostMm, LabelStock stock) {
        if (lostMm > 0) {
            throw InvalidInput.field(
                    name,
                    "OFF_THE_PAGE",
                    String.format(
                            Locale.ROOT,
                            "A shift of %.2f millimeters moves %.2f millimeters of the print off the page of %s; give less, and put the printer's own feed right",
                            shift,
                            lostMm,
                            stock.code()));
        }
    }

    /**
     * How many identical labels of each part: the block's number, but where one is named.
     *
     * @param asked such as {@code JAW:3,FORM:0}; null or blank names none
     * @throws InvalidInput where a part is not of the block, named twice, or its number is not 0 to 10
     */
    static Map<Part, Integer> copies(String asked, List<Part> parts, int each) {
        Map<Part, Integer> copies = new EnumMap<>(Part.class);
        if (asked != null && !asked.isBlank()) {
            for (String one : asked.split(",", -1)) {
                Matcher read = PART_AND_NUMBER.matcher(one.strip());
                Part part = read.matches()
                        ? parts.stream()
                                .filter(p -> p.name().equals(read.group(1)))
                                .findFirst()
                                .orElse(null)
                        : null;
                if (part == null || Integer.parseInt(read.group(2)) > MOST_COPIES) {
                    throw copiesFault(one, "is no part of this block with a number of copies", parts);
                }
                if (copies.put(part, Integer.valueOf(read.group(2))) != null) {
                    throw copiesFault(one, "names a part for the second time", parts);
                }
            }
        }
        parts.forEach(part -> copies.putIfAbsent(part, each));
        return copies;
    }

    private static InvalidInput copiesFault(String given, String fault, List<Part> parts) {
        return InvalidInput.field(
                "copies",
                "INVALID_VALUE",
                "'" + given.strip() + "' " + fault + "; give PART:NUMBER, separated by commas, with one of "
                        + parts.stream().map(Part::name).collect(Collectors.joining(", ")) + " and 0 to "
                        + MOST_COPIES);
    }

    /** The same with so many identical labels of each part. */
    Printing with(Map<Part, Integer> copies) {
        return new Printing(stock, run.withCopies(copies));
    }

    /** @throws InvalidInput where there is no such stock, naming those there are */
    public static LabelStock stock(String code) {
        return LabelStocks.named(code)
                .orElseThrow(() -> InvalidInput.field(
                        "stock",
                        "STOCK_UNKNOWN",
                        "'" + code + "' is no label stock; choose one of "
                                + LabelStocks.all().stream()
                                        .map(LabelStock::code)
                                        .collect(Collectors.joining(", "))));
    }

    private static double millimetres(String name, String given) {
        if (given.strip().matches("[+-]?[0-9]{1,2}(\\.[0-9]{1,4})?")) {
            double shift = Double.parseDouble(given.strip());
            if (Math.abs(shift) <= 10) {
                return shift;
            }
        }
        throw InvalidInput.field(
                name,
                "INVALID_VALUE",
                "'" + given + "' is not -10 to 10 millimeters, such as -0.5; measure on the calibration page");
    }
}
