package org.dentary.kit.chain;

import java.util.List;
import java.util.UUID;

/**
 * A label's life as a label.
 *
 * @param code the label
 * @param block whose chain tells it; the chain's name in an export
 * @param verified whether the block's chain agrees with itself and its list of codes with the digest in it
 * @param differences what does not, one sentence each
 * @param events its issuing, then what happened to this label, in the order of recording; empty where the block was issued
 *     before labels were on the ledger and nothing happened since
 */
public record LabelHistory(
        String code, UUID block, boolean verified, List<String> differences, List<LabelEvent> events) {
    public LabelHistory {
        differences = List.copyOf(differences);
        events = List.copyOf(events);
    }
}
