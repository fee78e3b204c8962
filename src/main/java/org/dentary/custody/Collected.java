package org.dentary.custody;

import java.time.Instant;

/**
 * A specimen whose custody begins.
 *
 * @param code its label code
 * @param occurredAt when it was collected
 * @param enteredAt when that was entered on the device, or null: when the service received it
 * @param place station, store or other place, or null
 * @param condition as the specimen's, or null
 * @param parent the specimen it was cut from, or null; then whoever holds the parent holds the piece
 */
public record Collected(
        String code, Instant occurredAt, Instant enteredAt, String place, String condition, String parent) {

    /** A specimen that was not cut from another. */
    public Collected(String code, Instant occurredAt, Instant enteredAt, String place, String condition) {
        this(code, occurredAt, enteredAt, place, condition, null);
    }
}
