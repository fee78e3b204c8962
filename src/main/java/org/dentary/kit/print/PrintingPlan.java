package org.dentary.kit.print;

import java.util.List;
import java.util.UUID;

/**
 * What a printing takes, told before it is made.
 *
 * @param stock code of the label stock
 * @param start first label to use on the first sheet, from 1
 * @param parts each part of the block in printing order, those left out too
 * @param labels labels in all
 * @param sheets sheets they take, the part-used first one counted; of a roll, its labels
 * @param labelsOnASheet how many a sheet of the stock holds, 1 for a roll
 * @param nextLabel where the next printing can begin on the last sheet; 1 where that is full
 * @param cautions where labels on this stock do not last, one sentence each; may be empty
 */
public record PrintingPlan(
        UUID block,
        String stock,
        int start,
        List<PartCopies> parts,
        int labels,
        int sheets,
        int labelsOnASheet,
        int nextLabel,
        List<String> cautions) {
    public PrintingPlan {
        parts = List.copyOf(parts);
        cautions = List.copyOf(cautions);
    }

    /**
     * How often a part is printed.
     *
     * @param part name of the part
     * @param words the same in words
     * @param codes different labels of it, voided ones left out
     * @param copies identical labels of each
     * @param labels labels of it in all
     */
    public record PartCopies(String part, String words, int codes, int copies, int labels) {}
}
