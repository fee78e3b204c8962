package org.dentary.kit.print;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.dentary.codes.Part;
import org.dentary.codes.sheet.LabelStock;
import org.dentary.codes.sheet.LabelStock.Use;
import org.dentary.codes.sheet.LabelStocks;

/**
 * Where a stock's labels do not last. Which label goes where is common practice, no source; the program's written
 * instructions stand above it, so this warns and refuses nothing.
 */
public final class StockAdvice {
    private StockAdvice() {}

    /** One sentence for each kind of place that the stock is not made for; empty where it suits all the parts. */
    public static List<String> cautions(LabelStock stock, Collection<Part> parts) {
        List<String> cautions = new ArrayList<>();
        add(cautions, stock, parts, EnumSet.of(Use.FORM), "are stuck on paper");
        add(cautions, stock, parts, EnumSet.of(Use.DRY_BAG), "go on the outside of bags and boxes");
        add(cautions, stock, parts, EnumSet.of(Use.FROZEN, Use.FORMALIN), "go into a freezer or into formalin");
        return cautions;
    }

    private static void add(
            List<String> cautions, LabelStock stock, Collection<Part> parts, Set<Use> places, String where) {
        String of = parts.stream()
                .filter(part -> placesOf(part).equals(places))
                .map(Part::label)
                .collect(Collectors.joining(", "));
        Set<Use> lacking = EnumSet.copyOf(places);
        lacking.removeAll(stock.uses());
        if (of.isEmpty() || lacking.isEmpty()) {
            return;
        }
        String better = LabelStocks.all().stream()
                .filter(other -> other.uses().containsAll(places))
                .map(LabelStock::name)
                .collect(Collectors.joining("; "));
        cautions.add(
                "Labels for " + of + " usually " + where + ", and this stock (" + stock.name() + ") is not made for "
                        + words(lacking) + ": the label may fade or fall off there. Made for it: " + better + ".");
    }

    private static Set<Use> placesOf(Part part) {
        return switch (part) {
            case FORM, STUB, SUBMISSION -> EnumSet.of(Use.FORM);
            case JAW, INCISOR, BOX -> EnumSet.of(Use.DRY_BAG);
            default -> EnumSet.of(Use.FROZEN, Use.FORMALIN);
        };
    }

    private static String words(Set<Use> uses) {
        return uses.stream().map(Use::words).collect(Collectors.joining(" or "));
    }
}
