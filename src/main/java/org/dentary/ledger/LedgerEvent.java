package org.dentary.ledger;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;

/**
 * An event in its chain. {@code bytes} is the record; every other component derives from it and stands beside it only
 * for look-ups.
 *
 * @param id the event's id
 * @param chain the chain's code
 * @param sequence position in the chain, from 1
 * @param kind what happened
 * @param bytes the exact hashed text, RFC 8785
 * @param predecessor hash of the event before it in the chain, or 64 zeros for the first
 * @param hash SHA-256 over the UTF-8 bytes of {@code bytes}, 64 lower-case hexadecimal digits
 */
public record LedgerEvent(
        UUID id, String chain, int sequence, String kind, String bytes, String predecessor, String hash) {

    /**
     * The draft as the next event after a head.
     *
     * @throws IllegalArgumentException if the head is another chain's, or a field cannot be written (see
     *     {@link CanonicalJson#of})
     */
    public static LedgerEvent following(ChainHead head, EventDraft draft) {
        if (!head.chain().equals(draft.chain())) {
            throw new IllegalArgumentException(
                    "an event of chain " + draft.chain() + " cannot follow on chain " + head.chain());
        }
        Map<String, Object> content = new LinkedHashMap<>();
        content.put("id", draft.id());
        content.put("chain", draft.chain());
        content.put("sequence", head.sequence() + 1);
        content.put("predecessor", head.hash());
        content.put("kind", draft.kind());
        content.put("occurredAt", draft.occurredAt());
        content.put("enteredAt", draft.enteredAt());
        content.put("receivedAt", draft.receivedAt());
        content.put("zone", draft.zone());
        content.put("actor", draft.actor());
        content.put("counterparty", draft.counterparty());
        content.put("place", draft.place());
        content.put("handOver", draft.handOver());
        content.put("fields", draft.fields().isEmpty() ? null : draft.fields());
        String bytes = CanonicalJson.of(content);
        return new LedgerEvent(
                draft.id(), draft.chain(), head.sequence() + 1, draft.kind(), bytes, head.hash(), Sha256.hex(bytes));
    }

    /**
     * The event that a record's bytes describe; every component derives from them.
     *
     * @throws IllegalArgumentException if the bytes are no event's
     */
    public static LedgerEvent parse(String bytes) {
        JsonNode content = CanonicalJson.parse(bytes);
        return new LedgerEvent(
                UUID.fromString(content.path("id").asText()),
                content.path("chain").asText(),
                content.path("sequence").asInt(),
                content.path("kind").asText(),
                bytes,
                content.path("predecessor").asText(),
                Sha256.hex(bytes));
    }

    /**
     * The digest that stands in the bytes for a field that is kept outside them.
     *
     * @param name the field, one inside a list or map by its path, joined by dots
     * @return null where there is none
     */
    public String digest(String name) {
        JsonNode at = content().path("fields");
        for (String part : name.split("\\.")) {
            at = at.isArray() && part.matches("[0-9]{1,9}") ? at.path(Integer.parseInt(part)) : at.path(part);
        }
        return at.path("sha256").asText(null);
    }

    /** What the bytes say, for reading: names as in {@link EventDraft}, redacted fields as {@code {"sha256": ...}}. */
    public JsonNode content() {
        return CanonicalJson.parse(bytes);
    }
}
