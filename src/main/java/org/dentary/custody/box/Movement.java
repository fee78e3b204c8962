package org.dentary.custody.box;

import java.time.Instant;
import org.dentary.custody.chain.Answers.Mark;

/**
 * Something put in or taken out at once.
 *
 * @param act id that its events share
 * @param packed true: put in
 * @param at when
 * @param zone time zone of the place
 * @param by who, by name
 * @param count how many specimens and boxes, what lay in boxes included
 * @param codes their label codes, sorted, up to ten
 */
public record Movement(String act, Boolean packed, Instant at, String zone, String by, Long count, String codes) {
    /** Where a list ends that ends with it. */
    Mark mark() {
        return new Mark(at.toString(), act);
    }
}
