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

/** The label stocks that come with the service, kept in {@code label-stocks.csv}; a program may read a file of its own. */
public final class LabelStocks {

    private static final List<LabelStock> SHIPPED = shipped();

    private LabelStocks() {}

    /** All shipped stocks, in the order of the file. */
    public static List<LabelStock> all() {
        return SHIPPED;
    }

    /** The shipped stock of a code, empty where there is none. */
    public static Optional<LabelStock> named(String code) {
        return SHIPPED.stream().filter(stock -> stock.code().equals(code)).findFirst();
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
                    line.getField("code"),
                    line.getField("name"),
                    line.getField("material"),
                    parts(line, "uses").map(LabelStock.Use::valueOf).collect(Collectors.toSet()),
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
        if (halves.length != 2) {
            throw new IllegalArgumentException("a symbol is written NAME=DOTS, not " + part);
        }
        return new LabelStock.PrintedSymbol(Symbology.valueOf(halves[0]), Integer.parseInt(halves[1]));
    }

    private static LabelStock.Extent extent(NamedCsvRecord line, String right, String down) {
        return new LabelStock.Extent(Double.parseDouble(line.getField(right)), Double.parseDouble(line.getField(down)));
    }

    private static int whole(NamedCsvRecord line, String field) {
        return Integer.parseInt(line.getField(field));
    }

    private static Stream<String> parts(NamedCsvRecord line, String field) {
        return Stream.of(line.getField(field).split("\\|")).map(String::strip);
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
