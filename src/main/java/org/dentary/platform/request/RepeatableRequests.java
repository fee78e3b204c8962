package org.dentary.platform.request;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.security.GeneralSecurityException;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.HexFormat;
import java.util.Set;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.dentary.platform.DataFolder;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.problem.StaleVersion;
import org.erdtman.jcs.JsonCanonicalizer;

/**
 * Knows every request that was ever accepted for a key, by its digest. A replay of any of them changes nothing; other
 * content needs the present version in {@code If-Match}.
 */
@ApplicationScoped
public class RepeatableRequests {
    /** What a request is, seen from what was accepted before. */
    public enum Seen {
        /** Nothing was accepted for this key yet. */
        NEW,
        /** This very content was accepted before: answer 200 with what is there today. */
        REPLAY,
        /** Other content, and the sender has seen the present version. */
        CHANGE
    }

    private static final String FORM = " form";
    private static final String HMAC = "HmacSHA256";
    private static final Set<String> LEFT_OUT = Set.of("contact");
    private static final String EXISTS =
            "select count(*), count(*) filter (where digest = :digest) from accepted_request"
                    + " where resource = :resource and key = :key";
    private static final String ACCEPT =
            "insert into accepted_request (resource, key, digest, accepted_at) values (:resource, :key, :digest, :at)"
                    + " on conflict do nothing";

    private final EntityManager entities;
    private final ObjectMapper json;
    private final Clock clock;
    private final byte[] key;

    RepeatableRequests(EntityManager entities, ObjectMapper json, Clock clock, DataFolder files) {
        this.entities = entities;
        this.json = json;
        this.clock = clock;
        this.key = files.key("request-digest");
    }

    /**
     * Compares a request with those accepted before.
     *
     * @param resource what kind of thing, such as {@code animal}
     * @param itsKey the client-known key, such as a kit
     * @param body the command as read from the request
     * @param ifMatch the If-Match header, or null
     * @param version today's version, or null if nothing is there
     * @throws RuleBroken (409) other content without If-Match
     * @throws StaleVersion (412) other content with an old If-Match, or an If-Match where nothing is recorded
     */
    public Seen compare(String resource, String itsKey, Object body, String ifMatch, Integer version) {
        Object[] counts = (Object[]) entities.createNativeQuery(EXISTS)
                .setParameter("resource", resource)
                .setParameter("key", itsKey)
                .setParameter("digest", digest(body))
                .getSingleResult();
        if (((Number) counts[1]).intValue() > 0) {
            return Seen.REPLAY;
        }
        if (version == null) {
            if (ifMatch != null) {
                throw new StaleVersion(
                        "STALE_VERSION",
                        resource + " " + itsKey
                                + " is not recorded yet, so no ETag can be its; send it without If-Match");
            }
            return Seen.NEW;
        }
        if (ifMatch == null) {
            throw new RuleBroken(
                    "ALREADY_RECORDED",
                    resource + " " + itsKey + " is already recorded with other content; read it, then send the change"
                            + " with its ETag as If-Match and a reason");
        }
        if (!ETags.matches(ifMatch, version)) {
            throw new StaleVersion(
                    "STALE_VERSION",
                    resource + " " + itsKey + " was changed since you read it (today's ETag is " + ETags.of(version)
                            + "); read it again and decide anew");
        }
        return Seen.CHANGE;
    }

    /**
     * Compares a request for what is never changed once it is recorded.
     *
     * @param there whether something is recorded under the key
     * @return {@link Seen#NEW} or {@link Seen#REPLAY}
     * @throws RuleBroken (409) if something else is
     */
    public Seen compare(String resource, String itsKey, Object body, boolean there) {
        Seen seen = there ? compare(resource, itsKey, body, "*", 0) : compare(resource, itsKey, body, null, null);
        if (seen == Seen.CHANGE) {
            throw new RuleBroken(
                    "ALREADY_RECORDED",
                    resource + " " + itsKey + " is already recorded with other content, and what is recorded so stays;"
                            + " record what is to be added under an id of its own");
        }
        return seen;
    }

    /** Keeps the digest of a request that is being accepted, in the caller's transaction. */
    public void accept(String resource, String itsKey, Object body) {
        entities.createNativeQuery(ACCEPT)
                .setParameter("resource", resource)
                .setParameter("key", itsKey)
                .setParameter("digest", digest(body))
                .setParameter("at", clock.instant())
                .executeUpdate();
    }

    /**
     * Whether a form that was sent before said this very thing then; a form's time may differ, for most say none.
     *
     * @throws RuleBroken (409) {@code FORM_SENT} if it said something else
     */
    public boolean isFormSent(String resource, String itsKey, Object said) {
        if (!isFormKnown(resource, itsKey, said)) {
            throw new RuleBroken(
                    "FORM_SENT",
                    "This form was sent already with other content; it stands as it was sent. Load the page again to"
                            + " record more");
        }
        return true;
    }

    /** Whether a form that said this very thing was accepted. */
    public boolean isFormKnown(String resource, String itsKey, Object said) {
        return compare(resource + FORM, itsKey, said, null, null) == Seen.REPLAY;
    }

    /** Keeps the digest of what a form said, in the caller's transaction. */
    public void acceptForm(String resource, String itsKey, Object said) {
        accept(resource + FORM, itsKey, said);
    }

    /** HMAC-SHA-256, in hex, over the RFC 8785 form of the body: contact and nulls left out, times in UTC. */
    String digest(Object body) {
        try {
            JsonNode plain = plain(json.valueToTree(body));
            byte[] canonical = new JsonCanonicalizer(json.writeValueAsBytes(plain)).getEncodedUTF8();
            Mac mac = Mac.getInstance(HMAC);
            mac.init(new SecretKeySpec(key, HMAC));
            return HexFormat.of().formatHex(mac.doFinal(canonical));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(HMAC + " is required of every Java platform", e);
        }
    }

    private static JsonNode plain(JsonNode node) {
        if (node.isObject()) {
            ObjectNode copy = JsonNodeFactory.instance.objectNode();
            node.properties().forEach(field -> {
                if (!field.getValue().isNull() && !LEFT_OUT.contains(field.getKey())) {
                    copy.set(field.getKey(), plain(field.getValue()));
                }
            });
            return copy;
        }
        if (node.isArray()) {
            ArrayNode copy = JsonNodeFactory.instance.arrayNode();
            node.forEach(item -> copy.add(plain(item)));
            return copy;
        }
        return node.isTextual() ? JsonNodeFactory.instance.textNode(utc(node.textValue())) : node;
    }

    private static String utc(String text) {
        if (text.length() < 16 || text.charAt(4) != '-' || text.indexOf('T') != 10) {
            return text;
        }
        try {
            return OffsetDateTime.parse(text).toInstant().toString();
        } catch (DateTimeParseException e) {
            return text;
        }
    }
}
