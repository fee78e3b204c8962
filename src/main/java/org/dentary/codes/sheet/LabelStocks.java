package org.dentary.codes.sheet;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.codes.symbol.Symbology;

/**
 * The label stocks: those that come with the service, kept in {@code label-stocks.csv}, and those of the program's own file,
 * read once at start.
 */
public final class LabelStocks {

    private static final List<LabelStock> SHIPPED = shipped();

    private static volatile List<LabelStock> all = SHIPPED;

    private LabelStocks() {}

    /** All stocks, the shipped ones first, each in the order of its file. */
    public static List<LabelStock> all() {
        return all;
    }

    /** The stock of a code, empty where there is none. */
    public static Optional<LabelStock> named(String code) {
        return all.stream().filter(stock -> stock.code().equals(code)).findFirst();
    }

    /**
     * Offers a program's own stocks after the shipped ones, in place of those added before.
     *
     * @throws IllegalArgumentException where one has the code of a shipped stock
     */
    static void add(List<LabelStock> own) {
        for (LabelStock stock : own) {
            if (SHIPPED.stream().anyMatch(shipped -> shipped.code().equals(stock.code()))) {
                throw new IllegalArgumentException("Label stock " + stock.code()
                        + " has the code of a stock that comes with the service; choose another");
            }
        }
        all = Stream.concat(SHIPPED.stream(), own.stream()).toList();
    }

    /**
     * Reads stocks from a CSV file (RFC 4180) with the header of the shipped one.
     *
     * @return in file order, each one able to carry its symbols and text
     * @throws IllegalArgumentException naming the line and what is wrong with it
     * @throws StockTooSmall where a label cannot carry what is to be printed on it
     */
    public static List<LabelStock> read(Reader csv) {
        try (CsvReader<NamedCsvRecord> lines = CsvReader.builder().ofNamedCsvRecord(csv)) {
            List<LabelStock> stocks = lines.stream().map(LabelStocks::stock).toList();
            if (stocks.isEmpty()) {
                throw new IllegalArgumentException("Label stocks: there is no line below the header.");
            }
            if (stocks.stream().map(LabelStock::code).distinct().count() != stocks.size()) {
                throw new IllegalArgumentException("Two label stocks have the same code.");
            }
            stocks.forEach(LabelLayout::of);
            return stocks;
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    private static LabelStock stock(NamedCsvRecord line) {
        try {
            return new LabelStock(
                    text(line, "code"),
                    text(line, "name"),
                    text(line, "material"),
                    parts(line, "uses")
                            .map(use -> oneOf("uses", use, LabelStock.Use.values()))
                            .collect(Collectors.toSet()),
                    whole(line, "dpi"),
                    extent(line, "pageWidthMm", "pageHeightMm"),
                    extent(line, "leftMm", "topMm"),
                    whole(line, "columns"),
                    whole(line, "rows"),
                    extent(line, "pitchRightMm", "pitchDownMm"),
                    extent(line, "labelWidthMm", "labelHeightMm"),
                    parts(line, "symbols").map(LabelStocks::symbol).toList(),
                    whole(line, "codePoints"),
                    whole(line, "textPoints"),
                    whole(line, "textLines"));
        } catch (StockTooSmall fault) {
            throw fault;
        } catch (RuntimeException fault) {
            throw new IllegalArgumentException(
                    "Label stocks, line " + line.getStartingLineNumber() + ": " + fault.getMessage(), fault);
        }
    }

    private static LabelStock.PrintedSymbol symbol(String part) {
        String[] halves = part.split("=", 2);
        if (halves.length != 2 || !halves[1].matches("[0-9]{1,3}")) {
            throw new IllegalArgumentException(
                    "a symbol is written NAME=DOTS with whole dots of the printer, not " + part);
        }
        return new LabelStock.PrintedSymbol(
                oneOf("symbols", halves[0], Symbology.values()), Integer.parseInt(halves[1]));
    }

    private static <E extends Enum<E>> E oneOf(String field, String given, E[] allowed) {
        return Stream.of(allowed)
                .filter(one -> one.name().equals(given))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(field + " has '" + given + "'; allowed: "
                        + Stream.of(allowed).map(Enum::name).collect(Collectors.joining(", "))));
    }

    private static LabelStock.Extent extent(NamedCsvRecord line, String right, String down) {
        return new LabelStock.Extent(millimetres(line, right), millimetres(line, down));
    }

    private static double millimetres(NamedCsvRecord line, String field) {
        String given = text(line, field);
        if (!given.matches("-?[0-9]{1,4}(\\.[0-9]{1,4})?")) {
            throw new IllegalArgumentException(field + " is '" + given + "'; give millimeters such as 4.75");
        }
        return Double.parseDouble(given);
    }

    private static int whole(NamedCsvRecord line, String field) {
        String given = text(line, field);
        if (!given.matches("-?[0-9]{1,4}")) {
            throw new IllegalArgumentException(field + " is '" + given + "'; give a whole number");
        }
        return Integer.parseInt(given);
    }

    private static String text(NamedCsvRecord line, String field) {
        return line.findField(field)
                .map(String::strip)
                .orElseThrow(() -> new IllegalArgumentException(field + " is missing"));
    }

    private static Stream<String> parts(NamedCsvRecord line, String field) {
        return Stream.of(text(line, field).split("\\|")).map(String::strip);
    }

    private static List<LabelStock> shipped() {
        try (Reader csv = new InputStreamReader(
                LabelStocks.class.getResourceAsStream("label-stocks.csv"), StandardCharsets.UTF_8)) {
            return read(csv);
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }
}
