package org.dentary.custody.event;

import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;
import org.dentary.custody.chain.CustodyKind;

/**
 * Record what happened to codes.
 *
 * @param codes specimens and boxes; what happens to a box happens to what is in it
 * @param kind what happened
 * @param occurredAt when
 * @param place a station, a store, an organisation or words; a store for STORED, a laboratory for FORWARDED
 * @param temperatureCelsius as read; needed for TEMPERATURE_READ
 * @param sensor which thermometer, or left out
 * @param tamperSeal number of the seal put on or found; left out on a check: none was found
 * @param condition as found, or left out
 * @param reason needed when late, and for LOST, DESTROYED, HOLD_PLACED and CORRECTED
 * @param enteredAt when that was entered on the device; left out: when the service received it
 * @param evidence what shows it, in words, or left out
 * @param photos ids of photographs that show it, kept before, or left out
 * @param witness for DESTROYED: who stood by, a person's code or sign-in name; see {@link Disposal}
 * @param corrects for CORRECTED: id of the event that is corrected
 */
public record RecordCustodyEvent(
        @NotEmpty(message = "send at least one code, as scanned")
        List<@NotBlank(message = "a code is empty; scan it again") String> codes,

        @NotNull(message = "say what happened, such as TEMPERATURE_READ")
        CustodyKind kind,

        @NotNull(message = "say when, as a time with offset such as 2026-11-14T07:30:00-06:00")
        OffsetDateTime occurredAt,

        @Size(max = 200, message = "a place has up to 200 characters")
        String place,

        @DecimalMin(value = "-200", message = "a temperature lies between -200 and 100 degrees Celsius")
        @DecimalMax(value = "100", message = "a temperature lies between -200 and 100 degrees Celsius")
        @Digits(integer = 3, fraction = 2, message = "a temperature has up to two decimals")
        BigDecimal temperatureCelsius,

        @Size(max = 60, message = "a sensor's name has up to 60 characters")
        String sensor,

        @Size(max = 60, message = "a seal's number has up to 60 characters")
        String tamperSeal,

        Condition condition,

        @Size(max = 2000, message = "a reason has up to 2000 characters")
        String reason,

        OffsetDateTime enteredAt,

        @Size(max = 2000, message = "evidence has up to 2000 characters")
        String evidence,

        UUID corrects,

        // Left out where empty, so that what was accepted before there were photos has the digest that it had.
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<UUID> photos,

        @JsonInclude(JsonInclude.Include.NON_EMPTY) @Size(max = 80, message = "a person's code has up to 80 characters")
        String witness) {

    /** The same without its time. */
    RecordCustodyEvent untimed() {
        return new RecordCustodyEvent(
                codes,
                kind,
                null,
                place,
                temperatureCelsius,
                sensor,
                tamperSeal,
                condition,
                reason,
                enteredAt,
                evidence,
                corrects,
                photos,
                witness);
    }

    /** How tissue was found. */
    public enum Condition {
        GOOD,
        SOFT,
        AUTOLYSED,
        FROZEN_BEFORE_SAMPLING,
        CONTAMINATED,
        UNKNOWN
    }
}
