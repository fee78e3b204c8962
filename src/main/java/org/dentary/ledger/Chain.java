package org.dentary.ledger;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;

/** Whether a chain is still the one that was recorded. Nothing here tells whether its first entry was true. */
public final class Chain {

    private Chain() {}

    /**
     * Checks the events of one chain against themselves, from its first event on.
     *
     * @param events in recorded order; an empty list holds
     * @return every difference in order of position, empty if all is as recorded; events cut off at the end cannot be
     *     seen this way, see {@link #verify(List, ChainHead)}
     */
    public static List<Difference> verify(List<LedgerEvent> events) {
        List<Difference> differences = new ArrayList<>();
        int position = 0;
        String before = Sha256.NOTHING_BEFORE;
        String chain = events.isEmpty() ? null : events.get(0).chain();
        for (LedgerEvent event : events) {
            position++;
            compare(differences, event, position, "chain", chain, event.chain());
            compare(differences, event, position, "sequence", position, event.sequence());
            compare(differences, event, position, "predecessor", before, event.predecessor());
            compare(differences, event, position, "hash", event.hash(), Sha256.hex(event.bytes()));
            columnsAgainstBytes(differences, event, position);
            before = event.hash();
        }
        return List.copyOf(differences);
    }

    /**
     * The same, and the chain must end at a head that was noted elsewhere: events cut off at the end show.
     *
     * @param head where the chain ended when it was noted
     */
    public static List<Difference> verify(List<LedgerEvent> events, ChainHead head) {
        List<Difference> differences = new ArrayList<>(verify(events));
        int last = events.size();
        if (last < head.sequence()) {
            differences.add(new Difference(
                    "end of chain " + head.chain() + " after position " + last,
                    last,
                    null,
                    "events up to position",
                    head.sequence() + " with hash " + head.hash(),
                    String.valueOf(last)));
        } else if (head.sequence() > 0) {
            LedgerEvent noted = events.get(head.sequence() - 1);
            compare(differences, noted, head.sequence(), "noted hash", head.hash(), noted.hash());
        }
        return List.copyOf(differences);
    }

    /**
     * Checks what is kept outside the hashed bytes of events against the digests inside. What was erased is no difference.
     *
     * @param kept content by event and field as {@link LedgerStore#secrets} gives it
     * @return every difference in order of position, empty if all is as recorded
     */
    public static List<Difference> verifyOutside(List<LedgerEvent> events, Map<UUID, Map<String, Redacted>> kept) {
        List<Difference> differences = new ArrayList<>();
        for (LedgerEvent event : events) {
            kept.getOrDefault(event.id(), Map.of()).forEach((name, content) -> {
                String expected = digest(event, name);
                if (!content.digest().equals(expected)) {
                    differences.add(Difference.inEvent(
                            event,
                            event.sequence(),
                            "digest of " + name + " kept outside",
                            expected,
                            content.digest()));
                }
            });
        }
        return List.copyOf(differences);
    }

    private static String digest(LedgerEvent event, String name) {
        try {
            return event.digest(name) == null ? "none" : event.digest(name);
        } catch (IllegalArgumentException e) {
            return e.getMessage();
        }
    }

    /** The columns derive from the bytes, so each must still say what they say. */
    private static void columnsAgainstBytes(List<Difference> differences, LedgerEvent event, int position) {
        JsonNode content;
        try {
            content = event.content();
        } catch (IllegalArgumentException e) {
            differences.add(Difference.inEvent(event, position, "bytes", "a JSON object", e.getMessage()));
            return;
        }
        Map<String, Object> columns = new TreeMap<>(Map.of(
                "id", event.id(),
                "chain", event.chain(),
                "sequence", event.sequence(),
                "kind", event.kind(),
                "predecessor", event.predecessor()));
        columns.forEach((name, column) -> compare(
                differences,
                event,
                position,
                name + " beside its bytes",
                content.path(name).asText(),
                String.valueOf(column)));
    }

    private static void compare(
            List<Difference> differences, LedgerEvent event, int position, String what, Object expected, Object found) {
        if (!expected.equals(found)) {
            differences.add(Difference.inEvent(event, position, what, expected, found));
        }
    }
}
