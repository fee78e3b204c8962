package org.dentary.jaw;

import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;
import org.dentary.jaw.key.AgeClass;
import org.dentary.jaw.key.Certainty;
import org.dentary.jaw.key.JawContext.JawState;
import org.dentary.jaw.key.JawObservation;
import org.dentary.jaw.key.JawObservation.RowSeen;
import org.dentary.jaw.key.JawObservation.SixthTooth;
import org.dentary.jaw.key.JawObservation.ThirdTooth;
import org.dentary.jaw.key.JawObservation.ToothDetail;
import org.dentary.jaw.key.JawSide;
import org.dentary.jaw.key.YearClass;

/**
 * One person's reading of one animal's jaw, or its age by another method.
 *
 * @param id made by the sender; the address names it where it is sent by itself
 * @param examiner person code or sign-in name; who sends it when left out
 * @param method {@code TOOTH_REPLACEMENT} when left out; the key answers only methods that look at teeth in the jaw
 * @param unsure names of fields answered "unsure"
 * @param abnormal whether the jaw is called abnormal or damaged; then with a note
 * @param examinersClass the reader's own call; for other methods the age itself
 * @param atLeast for other methods, in place of a class: the youngest it can be, such as an outside "not a fawn"; a bound is never
 *     a class
 * @param blind false where an earlier reading was known to the reader
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ReadJaw(
        UUID id,

        @NotNull(message = "say when the jaw was read, with offset, such as 2026-11-14T07:30:00-06:00")
        OffsetDateTime readAt,

        @Size(max = 80) String examiner,
        AgeingMethod method,
        RowSeen rowSeen,
        Integer cheekTeeth,
        ThirdTooth thirdTooth,
        SixthTooth sixthTooth,
        List<ToothDetail> teeth,
        List<String> unsure,
        Boolean abnormal,
        AgeClass examinersClass,
        YearClass examinersYearClass,
        Certainty examinersCertainty,
        JawSide side,
        JawState jawState,
        Whereabouts whereabouts,
        @Size(max = 2000) String note,
        AgeClass atLeast,
        Boolean blind,
        OffsetDateTime enteredAt) {
    /** The same under the id of its address. */
    public ReadJaw as(UUID itsId) {
        return new ReadJaw(
                itsId,
                readAt,
                examiner,
                method,
                rowSeen,
                cheekTeeth,
                thirdTooth,
                sixthTooth,
                teeth,
                unsure,
                abnormal,
                examinersClass,
                examinersYearClass,
                examinersCertainty,
                side,
                jawState,
                whereabouts,
                note,
                atLeast,
                blind,
                enteredAt);
    }

    AgeingMethod methodOrDefault() {
        return method == null ? AgeingMethod.TOOTH_REPLACEMENT : method;
    }

    /** Whether the jaw itself was looked at, so that the key can answer and the reading can stand. */
    boolean looksAtTeeth() {
        return JawReadings.LOOK_AT_TEETH.contains(methodOrDefault());
    }

    /** What was seen, as the key takes it. */
    public JawObservation observation(String species) {
        return new JawObservation(
                species,
                null,
                rowSeen,
                cheekTeeth,
                thirdTooth,
                sixthTooth,
                teeth,
                unsure,
                abnormal,
                examinersClass,
                examinersYearClass,
                examinersCertainty);
    }
}
