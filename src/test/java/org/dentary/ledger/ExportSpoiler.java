package org.dentary.ledger;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.UUID;

/** What may befall an export and a proof on the way. */
final class ExportSpoiler {

    private ExportSpoiler() {}

    /** The lines after something was done to one of them (counted from 1). */
    static List<String> spoil(List<String> exported, String what, int line, SigningKey ours, SigningKey other) {
        List<String> lines = new ArrayList<>(exported);
        int at = line - 1;
        switch (what) {
            case "NOTHING", "FORGE", "FLIP_HIGH_BIT", "CUT_IN_LINE" -> {}
            case "FLIP_BIT" -> lines.set(at, lines.get(at).replace("person-7", "person-6"));
            case "FLIP_BIT_AND_REHASH" -> lines.set(at, rehashed(lines.get(at).replace("person-7", "person-6")));
            case "SEQUENCE_PLUS_ONE" ->
                lines.set(at, rehashed(lines.get(at).replace("sequence\\\":3", "sequence\\\":4")));
            case "FLIP_BIT_AND_RESEAL" ->
                lines = resealed(spoil(exported, "FLIP_BIT_AND_REHASH", line, ours, other), ours);
            case "SEQUENCE_PLUS_ONE_AND_RESEAL" ->
                lines = resealed(spoil(exported, "SEQUENCE_PLUS_ONE", line, ours, other), ours);
            case "LONE_SURROGATE" -> {
                // It has no bytes: an encoder that puts "?" for it finds the hash of the text with "?".
                lines.set(at, rehashed(lines.get(at).replace("person-7", "person-?")));
                lines = resealed(lines, ours);
                lines.set(at, lines.get(at).replace("person-?", "person-\\ud800"));
            }
            case "DROP" -> lines.remove(at);
            case "SWAP_WITH_NEXT" -> Collections.swap(lines, at, at + 1);
            case "REPEAT" -> lines.add(at, lines.get(at));
            case "CUT_LAST_LINE" -> lines.remove(lines.size() - 1);
            case "CUT_AFTER_CHECKPOINT_2" -> lines.subList(8, lines.size()).clear();
            case "EMPTY" -> lines.clear();
            case "CHANGE_MADE_AT" -> lines.set(at, lines.get(at).replace("madeAt\\\":\\\"2026", "madeAt\\\":\\\"2025"));
            case "CHANGE_LEAF" -> {
                ObjectNode node = object(lines.get(at));
                ((ArrayNode) node.path("leaves")).set(1, Sha256.hex("another"));
                lines.set(at, node.toString());
            }
            case "DROP_LEAF" -> {
                ObjectNode node = object(lines.get(at));
                ((ArrayNode) node.path("leaves")).remove(2);
                lines.set(at, node.toString());
            }
            case "ADD_NAME" ->
                lines.set(at, object(lines.get(at)).put("remark", "all well").toString());
            case "NO_JSON" -> lines.set(at, "{event}");
            case "SIGN_BY_OTHER" -> {
                ObjectNode node = object(lines.get(at));
                lines.set(
                        at,
                        node.put("signature", other.sign(node.path("checkpoint").asText()))
                                .toString());
            }
            default -> throw new IllegalArgumentException(what);
        }
        return lines;
    }

    static byte[] spoilBytes(byte[] file, String what) {
        switch (what) {
            case "FLIP_HIGH_BIT" -> {
                String text = new String(file, StandardCharsets.ISO_8859_1);
                file[text.indexOf("person-7", text.indexOf('\n'))] ^= (byte) 0x80;
                return file;
            }
            case "CUT_IN_LINE" -> {
                return Arrays.copyOf(file, file.length - 40);
            }
            default -> {
                return file;
            }
        }
    }

    static String spoilProof(String proof, String what) {
        ObjectNode node = object(proof);
        switch (what) {
            case "AS_GIVEN" -> {}
            case "INDEX_PLUS_ONE" -> node.put("index", node.path("index").asInt() + 1);
            case "FLIP_BIT" -> node.put("event", node.path("event").asText().replace("person-7", "person-6"));
            case "EVENT_NO_JSON" -> node.put("event", "{event}");
            case "CHECKPOINT_WITHOUT_NUMBER" ->
                node.put("checkpoint", node.path("checkpoint").asText().replace("\"number\"", "\"figure\""));
            case "SHORT_PATH" -> ((ArrayNode) node.path("path")).remove(0);
            default -> throw new IllegalArgumentException(what);
        }
        return node.toString();
    }

    /** The events before the first checkpoint under a checkpoint of their own, as only the key's holder can make it. */
    private static List<String> resealed(List<String> lines, SigningKey ours) {
        List<String> events = new ArrayList<>();
        lines.stream().takeWhile(line -> line.startsWith("{\"event")).forEach(events::add);
        List<String> hashes =
                events.stream().map(line -> object(line).path("hash").asText()).toList();
        Checkpoint checkpoint = Checkpoint.following(null, UUID.randomUUID(), LedgerFixture.MORNING, hashes, ours);
        events.add(ExportLines.checkpoint(checkpoint, hashes));
        return events;
    }

    private static String rehashed(String line) {
        ObjectNode node = object(line);
        return node.put("hash", Sha256.hex(node.path("event").asText())).toString();
    }

    private static ObjectNode object(String json) {
        return (ObjectNode) CanonicalJson.parse(json);
    }
}
