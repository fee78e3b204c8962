package org.dentary.kit;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.dentary.codes.Part;
import org.dentary.codes.sheet.LabelRun;
import org.dentary.codes.sheet.LabelStock;
import org.dentary.codes.sheet.LabelStocks;
import org.dentary.platform.problem.InvalidInput;

/**
 * How labels are to be printed.
 *
 * @param stock what on
 * @param run from which label of the first sheet, shifted how far, how many of each
 */
record Printing(LabelStock stock, LabelRun run) {
    static final String FIRST_STOCK = "LETTER_30";

    /**
     * As asked for in an address.
     *
     * @param stock code of the stock
     * @param start first label to use, from 1
     * @param offsetX millimetres to the right, -10 to 10
     * @param offsetY millimetres down, -10 to 10
     * @throws InvalidInput naming the parameter, what was given and what is allowed
     */
    static Printing of(String stock, String start, String offsetX, String offsetY) {
        LabelStock found = stock(stock);
        int first = start.matches("[0-9]{1,3}") ? Integer.parseInt(start) : 0;
        if (first < 1 || first > found.labelsOnAPage()) {
            throw InvalidInput.field(
                    "start",
                    "INVALID_VALUE",
                    "'" + start + "' is no label of a sheet of " + found.code() + "; give 1 to "
                            + found.labelsOnAPage());
        }
        return new Printing(
                found, new LabelRun(first, Map.of(), millimetres("offsetX", offsetX), millimetres("offsetY", offsetY)));
    }

    /** The same with so many identical labels of each part. */
    Printing copies(List<Part> parts, int copies) {
        Map<Part, Integer> each = new HashMap<>();
        parts.forEach(part -> each.put(part, copies));
        return new Printing(stock, run.withCopies(each));
    }

    static LabelStock stock(String code) {
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
        try {
            double shift = Double.parseDouble(given);
            if (Math.abs(shift) <= 10) {
                return shift;
            }
        } catch (NumberFormatException fault) {
            // Told below, with what is allowed.
        }
        throw InvalidInput.field(
                name, "INVALID_VALUE", "'" + given + "' is not -10 to 10 millimetres; measure on the calibration page");
    }
}
