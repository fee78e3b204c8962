package org.dentary.custody.desk;

import jakarta.ws.rs.FormParam;
import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.codes.TypedText;
import org.dentary.custody.evidence.PhotoForms;
import org.dentary.custody.handover.OfferHandOver;
import org.dentary.platform.CalendarText;
import org.dentary.platform.problem.InvalidInput;

/** A hand-over as it was typed; every field may be null. The key is the page's: sent twice, it is one hand-over. */
public class HandOverForm {
    @FormParam("key")
    public String key;

    @FormParam("codes")
    public String codes;

    @FormParam("to")
    public String to;

    @FormParam("place")
    public String place;

    @FormParam("signedBy")
    public String signedBy;

    @FormParam("signature")
    public String signature;

    @FormParam("paperForm")
    public String paperForm;

    @FormParam("occurredAt")
    public String occurredAt;

    /** Photographs that were kept when the form was sent before. */
    @FormParam("photos")
    public List<String> photos;

    @FormParam("zone")
    public String zone;

    @FormParam("reason")
    public String reason;

    /** The code of who is meant by {@link #to}, or what was typed where that is nobody's name alone. */
    String receiver;

    /** An empty form under a fresh key. */
    static HandOverForm fresh(String codes) {
        HandOverForm form = new HandOverForm();
        form.key = UUID.randomUUID().toString();
        form.codes = codes;
        return form;
    }

    /** Whether more than codes and receiver was typed, so that the rest of the form is shown open. */
    public boolean isDetailed() {
        return said(signedBy) != null
                || said(paperForm) != null
                || said(occurredAt) != null
                || said(reason) != null
                || !photoIds().isEmpty();
    }

    /** Photographs kept so far; never null. */
    public List<UUID> photoIds() {
        return PhotoForms.ids(photos);
    }

    UUID id() {
        try {
            return UUID.fromString(key);
        } catch (IllegalArgumentException | NullPointerException fault) {
            throw InvalidInput.field("codes", "NO_KEY", "This form is broken; load the page again");
        }
    }

    /** @throws InvalidInput without codes or receiver, or for a time that is none */
    OfferHandOver command(OffsetDateTime now) {
        if (said(to) == null) {
            throw InvalidInput.field("to", "REQUIRED", "Say who takes it over");
        }
        return new OfferHandOver(
                lines(codes),
                receiver,
                said(place),
                time(now),
                null,
                said(reason),
                said(signedBy),
                said(paperForm),
                said(signature),
                photoIds());
    }

    private OffsetDateTime time(OffsetDateTime now) {
        return time(occurredAt, zone, now);
    }

    /**
     * A day and time as a page's field gives them, on the clock of a zone; now where it was left empty.
     *
     * @throws InvalidInput if it is none
     */
    public static OffsetDateTime time(String local, String zone, OffsetDateTime now) {
        ZoneId clock = zone(zone);
        if (said(local) == null) {
            return now;
        }
        try {
            return CalendarText.local(local.strip()).atZone(clock).toOffsetDateTime();
        } catch (DateTimeException fault) {
            throw InvalidInput.field(
                    "occurredAt", "INVALID_VALUE", "'" + local + "' is no day and time; pick both, or leave it");
        }
    }

    /** UTC where none was named. */
    private static ZoneId zone(String typed) {
        try {
            return said(typed) == null ? ZoneOffset.UTC : ZoneId.of(typed.strip());
        } catch (DateTimeException fault) {
            throw InvalidInput.field(
                    "zone", "INVALID_VALUE", "'" + typed + "' is no time zone, such as America/Chicago; choose one");
        }
    }

    /**
     * The value of that name.
     *
     * @throws InvalidInput naming what was given and what is allowed
     */
    public static <E extends Enum<E>> E oneOf(String field, String given, E[] allowed) {
        return Arrays.stream(allowed)
                .filter(one -> one.name().equals(given.strip()))
                .findFirst()
                .orElseThrow(() -> InvalidInput.field(
                        field,
                        "INVALID_VALUE",
                        "'" + given + "' is not allowed here; choose one of "
                                + Arrays.stream(allowed).map(Enum::name).collect(Collectors.joining(", "))));
    }

    /**
     * The version of what a page showed, for its ETag.
     *
     * @throws InvalidInput if it is none
     */
    public static int version(String text) {
        if (text == null || !text.matches("[0-9]{1,9}")) {
            throw InvalidInput.field(
                    "version",
                    "NO_VERSION",
                    "This form does not say which version it was filled in for; load the page again");
        }
        return Integer.parseInt(text);
    }

    /** What was typed without blanks around it; null where nothing was. */
    public static String said(String text) {
        return text == null || text.isBlank() ? null : text.strip();
    }

    /** @throws InvalidInput where nothing was scanned */
    public static List<String> lines(String codes) {
        List<String> lines = TypedText.several(codes);
        if (lines.isEmpty()) {
            throw InvalidInput.field("codes", "REQUIRED", "Scan at least one code");
        }
        return lines;
    }
}
