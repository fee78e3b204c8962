package org.dentary.ledger;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/** Chains of invented codes to spoil. */
final class LedgerFixture {

    static final Instant MORNING = Instant.parse("2026-11-14T15:00:00Z");
    static final ZoneId CHICAGO = ZoneId.of("America/Chicago");

    private LedgerFixture() {}

    static EventDraft aDraft(String chain, String kind) {
        return EventDraft.of(
                chain, kind, MORNING, MORNING.plusSeconds(30), MORNING.plusSeconds(3600), CHICAGO, "person-7");
    }

    static List<LedgerEvent> aChain(String chain, int length) {
        List<LedgerEvent> events = new ArrayList<>();
        ChainHead head = ChainHead.empty(chain);
        for (int i = 1; i <= length; i++) {
            LedgerEvent event = LedgerEvent.following(head, aDraft(chain, i == 1 ? "COLLECTED" : "MOVED"));
            events.add(event);
            head = ChainHead.after(event);
        }
        return events;
    }
}
