package org.dentary.ledger;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The lines of an export and the text of a proof, as {@code docs/custody-verification.md} fixes them.
 *
 * <p>A record's bytes travel as one JSON string, so every JSON reader gives back exactly what was hashed; nothing stands
 * beside them that a hash or the signature does not cover. In a file the events of a checkpoint come in leaf order,
 * followed by the checkpoint.
 */
public final class ExportLines {

    private static final ObjectMapper JSON = new ObjectMapper();

    private ExportLines() {}

    /** An event's line, without line end. */
    public static String event(LedgerEvent event) {
        return event(event.bytes(), event.hash());
    }

    /** An event's line from what is stored, without line end. */
    static String event(String bytes, String hash) {
        Map<String, Object> line = new LinkedHashMap<>();
        line.put("event", bytes);
        line.put("hash", hash);
        return write(line);
    }

    /**
     * A checkpoint's line, without line end.
     *
     * @param hashes the hashes of its events in leaf order
     */
    public static String checkpoint(Checkpoint checkpoint, List<String> hashes) {
        Map<String, Object> line = new LinkedHashMap<>();
        line.put("checkpoint", checkpoint.bytes());
        line.put("leaves", hashes);
        line.put("signature", checkpoint.signature());
        return write(line);
    }

    /** A proof, one JSON object on one line. */
    public static String proof(InclusionProof proof) {
        Map<String, Object> text = new LinkedHashMap<>();
        text.put("event", proof.event().bytes());
        text.put("index", proof.index());
        text.put("path", proof.path());
        text.put("checkpoint", proof.checkpoint().bytes());
        text.put("signature", proof.checkpoint().signature());
        return write(text);
    }

    private static String write(Map<String, Object> content) {
        try {
            return JSON.writeValueAsString(content);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("strings and numbers can always be written", e);
        }
    }
}
