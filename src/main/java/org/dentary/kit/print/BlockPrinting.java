package org.dentary.kit.print;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.Instant;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.codes.Part;

/**
 * A printing of a block that was made.
 *
 * @param number its place among all printings, later ones higher
 * @param stock label stock it was printed on
 * @param copies identical labels of each part, such as {@code JAW:3 FORM:1}; null where that was not kept yet
 * @param start first label used on the first sheet, or null
 * @param labels labels in all, or null
 * @param sheets sheets they took, or null
 * @param printedBy roster code or account
 * @param reason why again, or null
 */
public record BlockPrinting(
        Long number,
        String stock,
        String copies,
        Integer start,
        Integer labels,
        Integer sheets,
        String printedBy,
        Instant printedAt,
        String reason) {
    /** The copies in words: "Jaw 3, Form 1". */
    @JsonIgnore
    public String copiesWords() {
        return copies == null
                ? ""
                : Stream.of(copies.split(" "))
                        .map(one -> one.split(":"))
                        .map(one -> Part.valueOf(one[0]).label() + " " + one[1])
                        .collect(Collectors.joining(", "));
    }
}
