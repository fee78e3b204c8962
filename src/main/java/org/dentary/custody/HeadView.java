package org.dentary.custody;

import java.time.Instant;
import org.dentary.custody.chain.Head;

/**
 * Who has a code now.
 *
 * @param code the specimen's or box's label code
 * @param custodianKind {@code PERSON}, {@code PARTY} or {@code STORE}
 * @param custodian code of the custodian
 * @param place where it is, or null if nobody said
 * @param box code of the box it lies in, or null
 * @param lastKind the last thing recorded
 * @param lastOccurredAt when the latest thing on its chain happened
 * @param collectedAt when custody began
 * @param offered whether it is offered to somebody who has not answered
 */
public record HeadView(
        String code,
        String custodianKind,
        String custodian,
        String place,
        String box,
        String lastKind,
        Instant lastOccurredAt,
        Instant collectedAt,
        boolean offered) {

    static HeadView of(Head head) {
        return new HeadView(
                head.code(),
                head.holder().kind(),
                head.holder().code(),
                head.place(),
                head.box(),
                head.lastKind(),
                head.lastOccurredAt(),
                head.collectedAt(),
                head.offered() != null);
    }
}
