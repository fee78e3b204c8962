package org.dentary.custody.chain;

import java.util.Arrays;
import java.util.List;

/** What can happen to a specimen or a box, one word per event. */
public enum CustodyKind {
    LABEL_APPLIED("label put on and scanned back", Custody.STAYS, By.HAND),
    COLLECTED("collected", Custody.BEGINS, By.ROUTE),
    TAMPER_SEAL_APPLIED("tamper seal put on", Custody.STAYS, By.HAND),
    TAMPER_SEAL_CHECKED("tamper seal checked", Custody.STAYS, By.HAND),
    STORED("put into a store", Custody.TO_STORE, By.HAND),
    MOVED("moved", Custody.STAYS, By.HAND),
    TEMPERATURE_READ("temperature read", Custody.STAYS, By.HAND),
    PACKED("put into a box", Custody.STAYS, By.ROUTE),
    UNPACKED("taken out of a box", Custody.STAYS, By.ROUTE),
    HANDOVER_OFFERED("offered", Custody.STAYS, By.ROUTE),
    HANDOVER_ACCEPTED("handed over", Custody.TO_COUNTERPARTY, By.ROUTE),
    HANDOVER_REFUSED("offer refused", Custody.STAYS, By.ROUTE),
    SHIPPED("shipped", Custody.TO_COUNTERPARTY, By.ROUTE),
    DELIVERED("delivered", Custody.STAYS, By.HAND),
    RECEIVED("received and counted", Custody.TO_COUNTERPARTY, By.ROUTE),
    ACCESSIONED("entered under a laboratory number", Custody.STAYS, By.HAND),
    DISCREPANCY_OPENED("discrepancy opened", Custody.STAYS, By.ROUTE),
    DISCREPANCY_RESOLVED("discrepancy settled", Custody.STAYS, By.ROUTE),
    IDENTITY_EXCEPTION_ASKED("identity vouched for, an exception asked", Custody.STAYS, By.ROUTE),
    IDENTITY_EXCEPTION_GRANTED("identity accepted by exception", Custody.STAYS, By.ROUTE),
    IDENTITY_EXCEPTION_REFUSED("identity exception refused", Custody.STAYS, By.ROUTE),
    SPLIT("a piece was cut off", Custody.STAYS, By.ROUTE),
    FORWARDED("forwarded to another laboratory", Custody.TO_PLACE, By.HAND),
    TESTED("tested", Custody.STAYS, By.HAND),
    RETURNED("returned", Custody.TO_ACTOR, By.HAND),
    LOST("lost", Custody.STAYS, By.HAND),
    FOUND("found", Custody.TO_ACTOR, By.HAND),
    DESTROYED("destroyed", Custody.STAYS, By.HAND),
    RETAINED("kept in the archive", Custody.STAYS, By.HAND),
    HOLD_PLACED("hold placed", Custody.STAYS, By.HAND),
    HOLD_LIFTED("hold lifted", Custody.STAYS, By.HAND),
    CORRECTED("earlier entry corrected", Custody.STAYS, By.HAND);

    /** What an event does to custody. */
    public enum Custody {
        STAYS,
        BEGINS,
        TO_ACTOR,
        TO_COUNTERPARTY,
        TO_STORE,
        TO_PLACE
    }

    private enum By {
        HAND,
        ROUTE
    }

    private final String words;
    private final Custody custody;
    private final By by;

    CustodyKind(String words, Custody custody, By by) {
        this.words = words;
        this.custody = custody;
        this.by = by;
    }

    /** The event in plain words, lower case, as a timeline says it. */
    public String words() {
        return words;
    }

    /** Whether a person records it as such; the others come about by an act of their own, such as a hand-over. */
    public boolean isByHand() {
        return by == By.HAND;
    }

    public Custody custody() {
        return custody;
    }

    /** The kinds that a person records as such, in the order a specimen meets them. */
    public static List<CustodyKind> byHand() {
        return Arrays.stream(values()).filter(CustodyKind::isByHand).toList();
    }
}
