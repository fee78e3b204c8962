package org.dentary.custody.event;

import java.util.List;
import java.util.UUID;
import org.dentary.custody.chain.CustodyKind;
import org.dentary.custody.chain.RecordedEvent;

/**
 * What one custody act wrote.
 *
 * @param id as chosen by the client
 * @param kind what happened
 * @param events one per code, sorted by code; discrepancies that a seal check opened come with their own
 */
public record RecordedAct(UUID id, CustodyKind kind, List<Item> events) {

    /** One event on one chain. */
    public record Item(UUID id, String code, int sequence, CustodyKind kind, boolean late, String hash) {
        static Item of(RecordedEvent event) {
            return new Item(
                    event.event().id(),
                    event.event().chain(),
                    event.event().sequence(),
                    event.kind(),
                    event.step().late(),
                    event.event().hash());
        }
    }

    public RecordedAct {
        events = List.copyOf(events);
    }
}
