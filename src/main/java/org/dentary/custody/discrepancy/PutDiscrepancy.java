package org.dentary.custody.discrepancy;

import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;

/**
 * Open, change or settle a discrepancy.
 *
 * @param code label code it is about
 * @param owner person or account that settles it
 * @param dueOn by when
 * @param evidence what was seen, in words
 * @param outcome set it to settle; left out it is open
 * @param enteredAt when that was entered on the device; left out: when the service received it
 * @param reason why it is changed
 * @param photos ids of photographs that show what opens or settles it, kept before, or left out
 */
public record PutDiscrepancy(
        @NotBlank(message = "scan or type the code it is about")
        String code,

        @NotNull(message = "choose SHORT, OVER, DAMAGED, WRONG_ID, SEAL_MISMATCH, TEMPERATURE or OTHER")
        Kind kind,

        @NotBlank(message = "name the person or account that settles it")
        String owner,

        @NotNull(message = "say by which day it is to be settled, such as 2026-11-21")
        LocalDate dueOn,

        @Size(max = 2000, message = "evidence has up to 2000 characters")
        String evidence,

        Outcome outcome,
        OffsetDateTime enteredAt,

        @Size(max = 2000, message = "a reason has up to 2000 characters")
        String reason,

        // Left out where empty, so that what was accepted before there were photos has the digest that it had.
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<UUID> photos) {

    /** What does not add up. */
    public enum Kind {
        SHORT("It should have been there and was not counted."),
        OVER("It was counted and nobody had said that it comes."),
        DAMAGED("It came damaged."),
        WRONG_ID("It carried another code than it should."),
        SEAL_MISMATCH("The tamper seal found is not the one that was put on."),
        TEMPERATURE("It was warmer or colder than it may be."),
        OTHER("Something else does not add up.");

        private final String meaning;

        Kind(String meaning) {
            this.meaning = meaning;
        }

        /** What it means, one sentence. */
        public String meaning() {
            return meaning;
        }
    }

    /** How it was settled. */
    public enum Outcome {
        FOUND,
        MISCOUNT,
        MISLABEL,
        LOST,
        DESTROYED,
        ACCEPTED_WITH_DISCLAIMER
    }
}
