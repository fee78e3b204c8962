package org.dentary.custody.event;

import jakarta.ws.rs.FormParam;
import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;
import org.dentary.custody.chain.CustodyKind;
import org.dentary.custody.desk.HandOverForm;
import org.dentary.custody.evidence.PhotoForms;
import org.dentary.platform.problem.InvalidInput;

/** Something that happened to tissue, as it was typed; every field may be null. */
public class EventForm {
    @FormParam("key")
    public String key;

    @FormParam("codes")
    public String codes;

    @FormParam("kind")
    public String kind;

    @FormParam("place")
    public String place;

    @FormParam("temperatureCelsius")
    public String temperatureCelsius;

    @FormParam("sensor")
    public String sensor;

    @FormParam("witness")
    public String witness;

    @FormParam("tamperSeal")
    public String tamperSeal;

    @FormParam("condition")
    public String condition;

    @FormParam("reason")
    public String reason;

    @FormParam("evidence")
    public String evidence;

    @FormParam("occurredAt")
    public String occurredAt;

    @FormParam("zone")
    public String zone;

    @FormParam("corrects")
    public String corrects;

    /** Photographs that were kept when the form was sent before. */
    @FormParam("photos")
    public List<String> photos;

    /** An empty form under a fresh key. */
    static EventForm fresh(String codes, String kind, String corrects) {
        EventForm form = new EventForm();
        form.key = UUID.randomUUID().toString();
        form.codes = codes;
        form.kind = kind;
        form.corrects = corrects;
        return form;
    }

    /** Whether it corrects an earlier event. */
    public boolean isCorrection() {
        return HandOverForm.said(corrects) != null;
    }

    UUID id() {
        return uuid(key, "codes");
    }

    /** @throws InvalidInput without codes or kind, or for a number or time that is none */
    RecordCustodyEvent command(OffsetDateTime now) {
        return new RecordCustodyEvent(
                HandOverForm.lines(codes),
                kind(),
                HandOverForm.time(occurredAt, zone, now),
                HandOverForm.said(place),
                temperature(),
                HandOverForm.said(sensor),
                HandOverForm.said(tamperSeal),
                condition(),
                HandOverForm.said(reason),
                null,
                HandOverForm.said(evidence),
                isCorrection() ? uuid(corrects, "corrects") : null,
                photoIds(),
                HandOverForm.said(witness));
    }

    /** Photographs kept so far; never null. */
    public List<UUID> photoIds() {
        return PhotoForms.ids(photos);
    }

    private CustodyKind kind() {
        if (HandOverForm.said(kind) == null) {
            throw InvalidInput.field("kind", "REQUIRED", "Choose what happened");
        }
        return HandOverForm.oneOf("kind", kind, CustodyKind.values());
    }

    private RecordCustodyEvent.Condition condition() {
        return HandOverForm.said(condition) == null
                ? null
                : HandOverForm.oneOf("condition", condition, RecordCustodyEvent.Condition.values());
    }

    /** A comma is a decimal point, and the long minus of a printed page a hyphen. */
    private BigDecimal temperature() {
        String typed = HandOverForm.said(temperatureCelsius);
        if (typed == null) {
            return null;
        }
        String plain = typed.replace(',', '.').replace('\u2212', '-');
        if (!plain.matches("[+-]?\\d{1,4}(\\.\\d{1,4})?")) {
            throw InvalidInput.field(
                    "temperatureCelsius",
                    "INVALID_VALUE",
                    "'" + typed + "' is no number of degrees Celsius, such as 3.5");
        }
        return new BigDecimal(plain);
    }

    private static UUID uuid(String text, String field) {
        try {
            return UUID.fromString(text);
        } catch (IllegalArgumentException | NullPointerException fault) {
            throw InvalidInput.field(field, "NO_KEY", "This form is broken; load the page again");
        }
    }
}
