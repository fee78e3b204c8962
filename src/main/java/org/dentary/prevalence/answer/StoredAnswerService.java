package org.dentary.prevalence.answer;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.util.HexFormat;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import org.erdtman.jcs.JsonCanonicalizer;

/** The first answer to a question on a cut, kept as the bytes that were sent and served from there for ever. */
@ApplicationScoped
public class StoredAnswerService {
    /** Named on each answer, so that an upgrade knows which answers to compute again. */
    public static final String RULE_VERSION = "2";

    private final StoredAnswerQueries queries;
    private final ObjectMapper json;
    private final Clock clock;
    private final EntityManager entities;

    StoredAnswerService(StoredAnswerQueries queries, ObjectMapper json, Clock clock, EntityManager entities) {
        this.queries = queries;
        this.json = json;
        this.clock = clock;
        this.entities = entities;
    }

    /**
     * The stored answer, or the one made now, stored in a transaction of its own.
     *
     * @param question any value; equal questions have equal RFC 8785 forms
     */
    public String answer(UUID cut, Object question, String mediaType, Supplier<String> make) {
        String key = canonical(question);
        return queries.find(cut, key, mediaType).orElseGet(() -> {
            String answer = make.get();
            QuarkusTransaction.requiringNew()
                    .run(() ->
                            queries.store(cut, key, mediaType, answer, digest(answer), RULE_VERSION, clock.instant()));
            entities.clear();
            return queries.find(cut, key, mediaType).orElse(answer);
        });
    }

    /** RFC 8785 form of a value as JSON. */
    public String canonical(Object value) {
        try {
            return new JsonCanonicalizer(json.writeValueAsString(value)).getEncodedString();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** SHA-256 in hex. */
    public static String digest(String text) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("SHA-256 is required of every Java platform", e);
        }
    }

    /** Which answers are stored, oldest first, for the check after an upgrade: years of them do not fit into memory. */
    public List<StoredAnswer.Key> keys() {
        return queries.keys();
    }

    public StoredAnswer one(StoredAnswer.Key key) {
        return queries.one(key);
    }
}
