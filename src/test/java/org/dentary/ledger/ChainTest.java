package org.dentary.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

class ChainTest {

    private final JsonNode vectors = Vectors.read("chain.json");

    @TestFactory
    Stream<DynamicTest> hashesEventsAsAnotherLanguageDoes() {
        return Vectors.tests(vectors.path("events"), vector -> {
            JsonNode content = vector.path("content");
            String chain = content.path("chain").asText();
            int sequence = content.path("sequence").asInt();
            ChainHead head = new ChainHead(
                    chain, sequence - 1, content.path("predecessor").asText());
            LedgerEvent event = LedgerEvent.following(head, draft(content));
            assertEquals(vector.path("bytes").asText(), event.bytes());
            assertEquals(vector.path("hash").asText(), event.hash());
            assertEquals(event, LedgerEvent.parse(event.bytes()));
        });
    }

    @Test
    void findsNothingInAChainAsRecorded() {
        assertEquals(List.of(), Chain.verify(recorded()));
        assertEquals(
                List.of(), Chain.verify(recorded(), ChainHead.after(recorded().get(4))));
        assertEquals(
                List.of(), Chain.verify(recorded(), ChainHead.after(recorded().get(2))), "a chain may grow");
        assertEquals(List.of(), Chain.verify(List.of()));
    }

    @TestFactory
    Stream<DynamicTest> namesWhatWasSpoiltAndWhere() {
        return Vectors.tests(vectors.path("spoilt"), vector -> {
            List<LedgerEvent> events = recorded();
            spoil(events, vector.path("do").asText(), vector.path("position").asInt());
            List<Difference> differences =
                    Chain.verify(events, ChainHead.after(recorded().get(4)));
            assertTrue(!differences.isEmpty(), "nothing found");
            Difference first = differences.get(0);
            assertEquals(vector.path("expectError").asText(), first.what(), first.toString());
            assertEquals(vector.path("expectPosition").asInt(), first.position(), first.toString());
            assertTrue(!first.expected().equals(first.found()), first.toString());
            if (first.id() != null) {
                assertEquals(events.get(first.position() - 1).id().toString(), first.id(), first.toString());
            }
        });
    }

    @Test
    void saysTheExpectedAndTheFoundHash() {
        List<LedgerEvent> events = recorded();
        spoil(events, "SPOIL_HASH", 2);
        LedgerEvent spoilt = events.get(1);
        assertEquals(
                "event " + spoilt.id() + " at position 2 of chain K7MQ2RTVJ4: hash: expected " + spoilt.hash()
                        + ", found " + recorded().get(1).hash(),
                Chain.verify(events).get(0).toString());
    }

    @Test
    void refusesToFollowOnAnotherChain() {
        EventDraft draft = LedgerFixture.aDraft("A", "MOVED");
        assertThrows(IllegalArgumentException.class, () -> LedgerEvent.following(ChainHead.empty("B"), draft));
    }

    @Test
    void refusesAnEventWithoutChainKindOrActor() {
        assertThrows(IllegalArgumentException.class, () -> LedgerFixture.aDraft(" ", "MOVED"));
        assertThrows(IllegalArgumentException.class, () -> LedgerFixture.aDraft("A", null));
    }

    @Test
    void cutsTimesToMicrosecondsBeforeTheyAreHashed() {
        Instant nanos = Instant.parse("2026-11-14T15:00:00.123456789Z");
        EventDraft draft = EventDraft.of("A", "MOVED", nanos, nanos, nanos, LedgerFixture.CHICAGO, "person-7");
        assertEquals(Instant.parse("2026-11-14T15:00:00.123456Z"), draft.occurredAt());
        assertEquals(draft.occurredAt(), draft.enteredAt());
        assertEquals(draft.occurredAt(), draft.receivedAt());
    }

    private List<LedgerEvent> recorded() {
        return new ArrayList<>(Vectors.each(vectors.path("events"))
                .map(vector -> LedgerEvent.parse(vector.path("bytes").asText()))
                .toList());
    }

    private static void spoil(List<LedgerEvent> events, String what, int position) {
        LedgerEvent event = position == 0 ? null : events.get(position - 1);
        switch (what) {
            case "FLIP_BIT" -> replace(events, position, flipped(event.bytes()), event.hash());
            case "FLIP_BIT_AND_REHASH" ->
                replace(events, position, flipped(event.bytes()), Sha256.hex(flipped(event.bytes())));
            case "SPOIL_HASH" ->
                replace(
                        events,
                        position,
                        event.bytes(),
                        (event.hash().startsWith("0") ? "1" : "0")
                                + event.hash().substring(1));
            case "SEQUENCE_PLUS_ONE" ->
                events.set(
                        position - 1,
                        LedgerEvent.parse(
                                event.bytes().replace("\"sequence\":" + position, "\"sequence\":" + (position + 1))));
            case "COLUMN_SEQUENCE_PLUS_ONE" ->
                events.set(
                        position - 1,
                        new LedgerEvent(
                                event.id(),
                                event.chain(),
                                position + 1,
                                event.kind(),
                                event.bytes(),
                                event.predecessor(),
                                event.hash()));
            case "COLUMN_KIND" ->
                events.set(
                        position - 1,
                        new LedgerEvent(
                                event.id(),
                                event.chain(),
                                event.sequence(),
                                "LOST",
                                event.bytes(),
                                event.predecessor(),
                                event.hash()));
            case "DROP" -> events.remove(position - 1);
            case "SWAP_WITH_NEXT" -> Collections.swap(events, position - 1, position);
            case "TRUNCATE" -> events.subList(position, events.size()).clear();
            case "REPEAT" -> events.add(position, event);
            case "FOREIGN_CHAIN" ->
                events.set(position - 1, LedgerEvent.parse(event.bytes().replace("\"chain\":\"K7", "\"chain\":\"K8")));
            case "NO_JSON" -> replace(events, position, "{", Sha256.hex("{"));
            default -> throw new IllegalArgumentException(what);
        }
    }

    private static void replace(List<LedgerEvent> events, int position, String bytes, String hash) {
        LedgerEvent event = events.get(position - 1);
        events.set(
                position - 1,
                new LedgerEvent(
                        event.id(), event.chain(), event.sequence(), event.kind(), bytes, event.predecessor(), hash));
    }

    /** One bit in the actor's name: "person-7" becomes "person-6". */
    private static String flipped(String bytes) {
        return bytes.replace("\"actor\":\"person-7\"", "\"actor\":\"person-6\"");
    }

    private static EventDraft draft(JsonNode content) {
        EventDraft draft = EventDraft.of(
                        content.path("chain").asText(),
                        content.path("kind").asText(),
                        Instant.parse(content.path("occurredAt").asText()),
                        Instant.parse(content.path("enteredAt").asText()),
                        Instant.parse(content.path("receivedAt").asText()),
                        ZoneId.of(content.path("zone").asText()),
                        content.path("actor").asText())
                .withId(UUID.fromString(content.path("id").asText()));
        if (content.has("counterparty")) {
            draft = draft.withCounterparty(content.path("counterparty").asText())
                    .withHandOver(UUID.fromString(content.path("handOver").asText()));
        }
        if (content.has("fields")) {
            draft = draft.atPlace(content.path("place").asText())
                    .with("temperatureCelsius", new BigDecimal("-18.50"))
                    .with("count", 2)
                    .with("late", false)
                    .with("absent", null);
        }
        return draft;
    }
}
