package org.dentary.submission;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.dentary.plan.LaboratoryProfile;

/**
 * How a laboratory takes parcels, in words for who packs today. It warns, and refuses nothing.
 *
 * @param facts what the laboratory asks: a heading and its words
 * @param warning why a parcel that leaves today would have to wait, or null
 */
public record Receiving(List<Fact> facts, String warning) {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEEE, MMMM d, uuuu", Locale.US);

    /** One thing that it asks. */
    public record Fact(String what, String words) {}

    /** Nothing where the plan does not say. */
    public static Receiving of(Optional<LaboratoryProfile> known, LocalDate today) {
        if (known.isEmpty()) {
            return new Receiving(List.of(), null);
        }
        LaboratoryProfile profile = known.get();
        List<Fact> facts = new ArrayList<>();
        String weekdays = profile.receivesOn().stream()
                .map(day -> day.getDisplayName(TextStyle.FULL, Locale.US))
                .collect(Collectors.joining(", "));
        facts.add(new Fact(
                "Takes parcels",
                weekdays + (profile.cutOff() == null ? "" : ", until " + profile.cutOff() + " on its own clock")));
        Optional<LocalDate> next = profile.nextReceiving(today);
        next.ifPresent(day -> facts.add(new Fact("Next day of arrival", DAY.format(day))));
        add(facts, "Temperature", profile.temperature());
        add(facts, "Pieces", profile.pieces());
        add(facts, "Papers", profile.paperwork());
        add(facts, "Handling", profile.handling());
        return new Receiving(List.copyOf(facts), warning(profile, next, today.plusDays(1)));
    }

    private static String warning(LaboratoryProfile profile, Optional<LocalDate> next, LocalDate tomorrow) {
        return profile.closedOn(tomorrow)
                .map(why -> "It takes nothing on " + DAY.format(tomorrow) + " (" + why
                        + "). What leaves today waits until "
                        + next.map(DAY::format).orElse("a day that the plan does not know")
                        + ": keep it as it must be kept until then, or agree the arrival with the laboratory.")
                .orElse(null);
    }

    private static void add(List<Fact> facts, String what, String words) {
        if (words != null) {
            facts.add(new Fact(what, words));
        }
    }
}
