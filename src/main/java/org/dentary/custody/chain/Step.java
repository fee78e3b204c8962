package org.dentary.custody.chain;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.UUID;

/**
 * What the rules need to know of one recorded event.
 *
 * @param sequence position in the chain, from 1
 * @param id the event's id
 * @param kind what happened
 * @param occurredAt when it happened
 * @param enteredAt when it was entered on the device
 * @param actor who recorded it
 * @param custodian who held afterwards, or null where custody stayed
 * @param from who gave, or null
 * @param relinquishedAt when the giver says to have given, or null
 * @param late whether it was recorded as late
 * @param temperatureCelsius or null
 * @param tamperSeal number on the seal put on or found, or null
 * @param corrects the event that this one corrects, or null
 */
public record Step(
        int sequence,
        UUID id,
        CustodyKind kind,
        Instant occurredAt,
        Instant enteredAt,
        String actor,
        Holder custodian,
        Holder from,
        Instant relinquishedAt,
        boolean late,
        BigDecimal temperatureCelsius,
        String tamperSeal,
        UUID corrects) {}
