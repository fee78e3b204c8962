package org.dentary.custody.box;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.Instant;
import java.util.List;

/**
 * A box and what is in it.
 *
 * @param code its label code
 * @param place where it is
 * @param custodian who has it
 * @param tamperSeal number of the seal last put on, or null
 * @param box the box it lies in, or null
 * @param contents everything in it, boxes in boxes included, nearest first
 * @param count how many things are in it that are no boxes
 * @param version today's version, sent as ETag
 */
public record BoxView(
        String code,
        String state,
        String place,
        String custodian,
        String custodianKind,
        String custodianName,
        String tamperSeal,
        String box,
        String openedBy,
        Instant openedAt,
        boolean offered,
        int count,
        List<Item> contents,
        @JsonIgnore int version) {

    /**
     * One thing in a box.
     *
     * @param box the box it lies in directly
     * @param depth 1 for what lies in the box itself
     */
    public record Item(String code, String part, String box, int depth) {}

    public BoxView {
        contents = List.copyOf(contents);
    }

    /** Where what is in it is as CSV. */
    @JsonIgnore
    public String csv() {
        return "/api/v1/boxes/" + code + "/contents.csv";
    }

    /** Where what went in and came out is as CSV. */
    @JsonIgnore
    public String movementsCsv() {
        return "/api/v1/boxes/" + code + "/movements.csv";
    }
}
