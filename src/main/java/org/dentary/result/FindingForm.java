package org.dentary.result;

import jakarta.ws.rs.core.MultivaluedMap;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.UUID;
import org.dentary.codes.TypedText;
import org.dentary.platform.CalendarText;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;

/**
 * A finding as typed.
 *
 * @param id made with the empty form, so that a form sent twice records one finding
 * @param specimens codes parted by blanks, commas or lines
 */
public record FindingForm(
        String id,
        String specimens,
        String laboratory,
        String performingLaboratory,
        String method,
        String stage,
        String finding,
        String status,
        String accession,
        String item,
        String testedOn,
        String reportedOn,
        String reason,
        String measuredValue,
        String corrects) {

    /** A value to choose and its words. */
    public record Choice(String value, String words) {}

    static List<Choice> choices(Enum<?>[] values) {
        return Arrays.stream(values)
                .map(v -> new Choice(v.name(), words(v.name())))
                .toList();
    }

    private static String words(String name) {
        return name.charAt(0) + name.substring(1).toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    static FindingForm empty(String specimens) {
        return new FindingForm(
                UUID.randomUUID().toString(),
                specimens,
                "",
                "",
                "",
                Stage.SCREENING.name(),
                "",
                FindingStatus.FINAL.name(),
                "",
                "",
                "",
                "",
                "",
                "",
                "");
    }

    /** The same report again, to be put right. */
    static FindingForm correcting(FindingView earlier) {
        return new FindingForm(
                UUID.randomUUID().toString(),
                earlier.specimens(),
                earlier.laboratory(),
                Objects.toString(earlier.performingLaboratory(), ""),
                earlier.method(),
                earlier.stage(),
                "",
                FindingStatus.CORRECTED.name(),
                earlier.accession(),
                Objects.toString(earlier.item(), ""),
                Objects.toString(earlier.testedOn(), ""),
                "",
                "",
                "",
                earlier.id());
    }

    static FindingForm of(MultivaluedMap<String, String> typed) {
        return new FindingForm(
                given(typed, "id"),
                given(typed, "specimens"),
                given(typed, "laboratory"),
                given(typed, "performingLaboratory"),
                given(typed, "method"),
                given(typed, "stage"),
                given(typed, "finding"),
                given(typed, "status"),
                given(typed, "accession"),
                given(typed, "item"),
                given(typed, "testedOn"),
                given(typed, "reportedOn"),
                given(typed, "reason"),
                given(typed, "measuredValue"),
                given(typed, "corrects"));
    }

    private static String given(MultivaluedMap<String, String> typed, String field) {
        return Objects.toString(typed.getFirst(field), "").strip();
    }

    UUID key() {
        return uuid("id", id);
    }

    /**
     * What is recorded.
     *
     * @throws InvalidInput (422) with every field that cannot be read
     */
    RecordFinding command() {
        List<FieldProblem> faults = new ArrayList<>();
        RecordFinding command = new RecordFinding(
                TypedText.several(specimens),
                given(method),
                chosen(Stage.class, "stage", stage, faults),
                chosen(FindingWord.class, "finding", finding, faults),
                chosen(FindingStatus.class, "status", status, faults),
                given(accession),
                given(item),
                given(laboratory),
                given(performingLaboratory),
                day("testedOn", testedOn, faults),
                day("reportedOn", reportedOn, faults),
                chosen(FindingReason.class, "reason", reason, faults),
                given(measuredValue),
                corrects.isEmpty() ? null : uuid("corrects", corrects));
        if (!faults.isEmpty()) {
            throw InvalidInput.of(faults);
        }
        return command;
    }

    private static String given(String typed) {
        return typed.isEmpty() ? null : typed;
    }

    private static <E extends Enum<E>> E chosen(Class<E> of, String field, String typed, List<FieldProblem> faults) {
        if (typed.isEmpty()) {
            return null;
        }
        try {
            return Enum.valueOf(of, typed);
        } catch (IllegalArgumentException e) {
            faults.add(new FieldProblem(
                    field,
                    "NOT_A_VALUE",
                    "'" + typed + "' is not one of " + Arrays.toString(of.getEnumConstants())
                            + "; choose from the list"));
            return null;
        }
    }

    private static LocalDate day(String field, String typed, List<FieldProblem> faults) {
        if (typed.isEmpty()) {
            return null;
        }
        try {
            return CalendarText.day(typed);
        } catch (DateTimeParseException e) {
            faults.add(new FieldProblem(
                    field, "NOT_A_DATE", "'" + typed + "' is not a day; write year-month-day, such as 2026-12-03"));
            return null;
        }
    }

    private static UUID uuid(String field, String typed) {
        try {
            return UUID.fromString(typed);
        } catch (IllegalArgumentException e) {
            throw InvalidInput.field(
                    field, "NOT_A_UUID", "'" + typed + "' is not the id of a finding; open the form anew");
        }
    }
}
