package org.dentary.custody.chain;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.dentary.ledger.LedgerEvent;

/**
 * A recorded event, read from its stored bytes.
 *
 * @param event as recorded
 * @param content what the bytes say
 */
public record RecordedEvent(LedgerEvent event, JsonNode content) {
    private static final List<String> NEEDED =
            List.of("kind", "occurredAt", "enteredAt", "receivedAt", "zone", "actor");

    /** The event with the content of its stored bytes. */
    public static RecordedEvent of(LedgerEvent event) {
        return new RecordedEvent(event, event.content());
    }

    /** The same; empty where its bytes were changed so that they are no event of custody any more. */
    public static Optional<RecordedEvent> readable(LedgerEvent event) {
        try {
            RecordedEvent read = of(event);
            if (!read.isWhole()) {
                return Optional.empty();
            }
            read.step();
            read.time("receivedAt");
            ZoneId.of(read.text("zone"));
            return Optional.of(read);
        } catch (IllegalArgumentException | DateTimeException damaged) {
            return Optional.empty();
        }
    }

    /** Whether nothing is missing that every event has, and each custodian it names has kind and code. */
    private boolean isWhole() {
        return NEEDED.stream().allMatch(content::hasNonNull)
                && (field("custodianKind") == null) == (field("custodian") == null)
                && (field("fromKind") == null) == (field("from") == null);
    }

    /** What happened. */
    public CustodyKind kind() {
        return CustodyKind.valueOf(text("kind"));
    }

    /** A value of the event itself, or null. */
    public String text(String name) {
        return content.hasNonNull(name) ? content.get(name).asText() : null;
    }

    /** One of its further fields, or null. */
    public String field(String name) {
        JsonNode value = content.path("fields").get(name);
        return value == null || value.isNull() || value.isObject() ? null : value.asText();
    }

    /** The digest of a further field that is kept outside the ledger, or null. */
    public String digest(String name) {
        JsonNode value = content.path("fields").path(name).get("sha256");
        return value == null ? null : value.asText();
    }

    /** Whether its bytes name a photograph of this digest as evidence. */
    public boolean shows(String digest) {
        for (JsonNode photo : content.path("fields").path("evidencePhotos")) {
            if (photo.path("sha256").asText().equals(digest)) {
                return true;
            }
        }
        return false;
    }

    /** A moment of the event itself, such as {@code occurredAt}; every event has it. */
    public Instant time(String name) {
        return Instant.parse(text(name));
    }

    /** The event as the custody rules see it. */
    public Step step() {
        return new Step(
                event.sequence(),
                event.id(),
                kind(),
                time("occurredAt"),
                time("enteredAt"),
                text("actor"),
                holder("custodianKind", "custodian"),
                holder("fromKind", "from"),
                field("relinquishedAt") == null ? null : Instant.parse(field("relinquishedAt")),
                "true".equals(field("late")),
                field("temperatureCelsius") == null ? null : new BigDecimal(field("temperatureCelsius")),
                field("tamperSeal"),
                field("corrects") == null ? null : UUID.fromString(field("corrects")));
    }

    private Holder holder(String kind, String code) {
        return field(kind) == null ? null : new Holder(field(kind), field(code));
    }
}
