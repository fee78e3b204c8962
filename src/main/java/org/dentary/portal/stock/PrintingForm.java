package org.dentary.portal.stock;

import jakarta.ws.rs.core.UriBuilder;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.dentary.codes.Part;
import org.dentary.kit.BlockView;
import org.dentary.kit.print.BlockPrinting;
import org.dentary.kit.print.PrintParameters;
import org.dentary.kit.print.Printing;

/**
 * What was chosen to print a block, as typed, for the page that counts it and shows it again.
 *
 * @param asked the choice as the sheets are asked for
 * @param parts the block's parts with the number of copies chosen of each
 * @param reason why it is printed again; may be empty
 */
public record PrintingForm(PrintParameters asked, List<Choice> parts, String reason) {

    /** How many identical labels of a part were chosen. */
    public record Choice(Part part, int copies) {
        /** The numbers to choose from. */
        public List<Integer> numbers() {
            return IntStream.rangeClosed(0, Printing.MOST_COPIES).boxed().toList();
        }
    }

    /**
     * The choice of a request.
     *
     * @param copies {@code PART:NUMBER} each; empty takes what was printed last, or what the block was issued with
     * @param last the printing before, or null
     */
    static PrintingForm of(
            PrintParameters asked, List<String> copies, String reason, BlockView block, BlockPrinting last) {
        List<String> chosen = !copies.isEmpty() || last == null || last.copies() == null
                ? copies
                : List.of(last.copies().split(" "));
        if (!chosen.isEmpty()) {
            asked.copies = String.join(",", chosen);
        }
        Map<String, Integer> numbers = new HashMap<>();
        for (String one : chosen) {
            String[] halves = one.split(":", 2);
            if (halves.length == 2 && halves[1].matches("[0-9]{1,2}")) {
                numbers.put(halves[0], Integer.valueOf(halves[1]));
            }
        }
        List<Choice> parts = block.parts().stream()
                .map(part -> new Choice(part, numbers.getOrDefault(part.name(), block.copies())))
                .toList();
        return new PrintingForm(asked, parts, reason == null ? "" : reason.strip());
    }

    /** Where the sheets, the cover sheet or the plan of this choice are, such as {@code labels.pdf}. */
    public String href(BlockView block, String what) {
        UriBuilder address = UriBuilder.fromPath("/api/v1/kit-blocks/" + block.id() + "/" + what);
        asked.inAddress().forEach(address::queryParam);
        if (what.equals("labels.pdf") && !reason.isEmpty()) {
            address.queryParam("reason", reason);
        }
        return address.build().toString();
    }

    /** The choice in one line, to tell whether it is still the one that was counted. */
    public String counted() {
        return String.join(" ", asked.inAddress().values());
    }
}
