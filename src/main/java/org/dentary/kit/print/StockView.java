package org.dentary.kit.print;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.List;
import java.util.stream.Collectors;
import org.dentary.codes.sheet.LabelStock;
import org.dentary.codes.sheet.LabelStocks;

/**
 * A label stock, for choosing.
 *
 * @param uses where such a label lasts
 * @param labelsOnAPage how many a sheet holds, 1 for a roll
 * @param symbols words of the symbols printed on it
 */
public record StockView(
        String code,
        String name,
        String material,
        List<LabelStock.Use> uses,
        int dpi,
        int labelsOnAPage,
        double labelWidthMm,
        double labelHeightMm,
        List<String> symbols) {
    /** Where such a label lasts, in words: "form, dry bag". */
    @JsonIgnore
    public String useWords() {
        return uses.stream().map(LabelStock.Use::words).collect(Collectors.joining(", "));
    }

    static StockView of(LabelStock stock) {
        return new StockView(
                stock.code(),
                stock.name(),
                stock.material(),
                stock.uses().stream().sorted().toList(),
                stock.dpi(),
                stock.labelsOnAPage(),
                stock.label().rightMm(),
                stock.label().downMm(),
                stock.symbols().stream().map(s -> s.symbology().word()).toList());
    }

    /** Every stock in the order of the file. */
    public static List<StockView> all() {
        return LabelStocks.all().stream().map(StockView::of).toList();
    }
}
