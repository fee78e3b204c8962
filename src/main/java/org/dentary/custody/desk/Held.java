package org.dentary.custody.desk;

import java.time.Instant;
import org.dentary.custody.chain.Answers.Mark;

/**
 * A code in hand or in a store.
 *
 * @param custodian who has it, by name
 * @param box the box it lies in; empty for none
 * @param place by name where it has one; empty if nobody said
 * @param zone time zone of the station that its label was issued to
 */
public record Held(
        String code,
        String part,
        String custodian,
        String box,
        String place,
        Instant collectedAt,
        String zone,
        Boolean offered) {
    /** Where a list ends that ends with it. */
    Mark mark() {
        return new Mark(collectedAt.toString(), code);
    }
}
