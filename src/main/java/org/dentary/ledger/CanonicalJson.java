package org.dentary.ledger;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.erdtman.jcs.JsonCanonicalizer;

/**
 * The one text a content has, so that it always hashes alike: RFC 8785 (JSON Canonicalization Scheme).
 *
 * <p>Numbers are whole and at most 2^53 - 1 in size, because RFC 8785 writes every number as an IEEE 754 double;
 * decimals are strings that keep their digits, times are UTC with exactly six decimals.
 */
public final class CanonicalJson {

    private static final long LARGEST_WHOLE = (1L << 53) - 1;
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final DateTimeFormatter MICROSECONDS =
            DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSSSSS'Z'").withZone(ZoneOffset.UTC);

    private CanonicalJson() {}

    /**
     * The canonical text of an object.
     *
     * @param content names to values; a value is a string, whole number, boolean, {@link BigDecimal}, {@link Instant},
     *     {@link LocalDate}, {@link ZoneId}, {@link UUID}, enum, {@link Redacted}, or a list or map of these; a null
     *     value is left out
     * @throws IllegalArgumentException for any other value, a whole number beyond 2^53 - 1, or a string that holds half
     *     a surrogate pair
     */
    public static String of(Map<String, ?> content) {
        try {
            return canonicalize(JSON.writeValueAsString(plainMap(content)));
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("content cannot be written as JSON", e);
        }
    }

    /**
     * The canonical text of a JSON object or array.
     *
     * @throws IllegalArgumentException if the text is no JSON object or array, or repeats a name
     */
    public static String canonicalize(String json) {
        try {
            return new JsonCanonicalizer(json).getEncodedString();
        } catch (IOException | RuntimeException e) {
            throw new IllegalArgumentException("no canonical form: " + e.getMessage(), e);
        }
    }

    /**
     * A recorded text, for reading.
     *
     * @throws IllegalArgumentException if it is no JSON object
     */
    public static JsonNode parse(String bytes) {
        try {
            JsonNode content = JSON.readTree(bytes);
            if (content.isObject()) {
                return content;
            }
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("no JSON: " + e.getOriginalMessage(), e);
        }
        throw new IllegalArgumentException("no JSON object");
    }

    /** A time as the ledger writes it: UTC, six decimals, finer parts cut off. */
    public static String time(Instant instant) {
        return MICROSECONDS.format(instant);
    }

    private static Map<String, Object> plainMap(Map<?, ?> content) {
        Map<String, Object> plain = new LinkedHashMap<>();
        content.forEach((name, value) -> {
            if (value != null) {
                plain.put(whole(String.valueOf(name)), plain(value));
            }
        });
        return plain;
    }

    private static Object plain(Object value) {
        if (value instanceof Boolean) {
            return value;
        }
        if (value instanceof Integer || value instanceof Long || value instanceof Short) {
            return whole(((Number) value).longValue());
        }
        if (value instanceof BigDecimal decimal) {
            return decimal.toPlainString();
        }
        if (value instanceof Instant instant) {
            return time(instant);
        }
        if (value instanceof Redacted redacted) {
            return Map.of("sha256", redacted.digest());
        }
        if (value instanceof Enum<?> constant) {
            return constant.name();
        }
        if (value instanceof CharSequence
                || value instanceof UUID
                || value instanceof LocalDate
                || value instanceof ZoneId) {
            return whole(value.toString());
        }
        if (value instanceof Map<?, ?> map) {
            return plainMap(map);
        }
        if (value instanceof Collection<?> values) {
            List<Object> plain = new ArrayList<>();
            values.forEach(element -> plain.add(plain(element)));
            return plain;
        }
        throw new IllegalArgumentException("a ledger content cannot hold a "
                + (value == null ? "null in a list" : value.getClass().getSimpleName())
                + "; write decimals as BigDecimal and times as Instant");
    }

    private static Long whole(long number) {
        if (number > LARGEST_WHOLE || number < -LARGEST_WHOLE) {
            throw new IllegalArgumentException("whole number beyond 2^53 - 1: " + number + "; write it as a string");
        }
        return number;
    }

    private static String whole(String text) {
        for (int i = 0; i < text.length(); i++) {
            char unit = text.charAt(i);
            boolean paired = Character.isHighSurrogate(unit)
                    && i + 1 < text.length()
                    && Character.isLowSurrogate(text.charAt(i + 1));
            if (paired) {
                i++;
            } else if (Character.isSurrogate(unit)) {
                throw new IllegalArgumentException("half a surrogate pair at character " + i);
            }
        }
        return text;
    }
}
