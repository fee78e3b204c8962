package org.dentary.prevalence;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * What the ages of counted animals rest on, as it stood when the report's lines did. Animals of unknown age are not in it.
 *
 * @param groups how many by what; may be empty
 * @param readers different people whose readings stand
 * @param disputed animals of known age whose readers differ and nobody has decided
 */
record AgeBasis(List<Group> groups, int readers, int disputed) {
    /**
     * Animals whose age stands in one way.
     *
     * @param how {@code READ}, {@code DESIGNATED} or {@code NONE}, where no reading of that class is on record
     * @param method of the reading that stands; empty where none is named
     */
    record Group(String how, String method, Integer animals) {}

    /** The sentence for the notes; empty where no animal of known age is counted. */
    String told() {
        int all = groups.stream().mapToInt(Group::animals).sum();
        if (all == 0) {
            return "";
        }
        List<String> parts = new ArrayList<>();
        add(parts, "READ", "from a reading of the jaw by " + readers + (readers == 1 ? " reader" : " readers"));
        add(parts, "DESIGNATED", "decided by somebody who gave none of the readings");
        add(parts, "NONE", "without a reading on record");
        String basis = "What the " + all
                + (all == 1 ? " known age of a counted animal rests" : " known ages of counted animals rest") + " on: "
                + String.join("; ", parts) + ".";
        return disputed == 0
                ? basis
                : basis + " Readers differ in " + disputed
                        + " and nobody has decided; the first clear or probable reading stands.";
    }

    private void add(List<String> parts, String how, String words) {
        List<Group> these =
                groups.stream().filter(group -> group.how().equals(how)).toList();
        int animals = these.stream().mapToInt(Group::animals).sum();
        if (animals > 0) {
            String methods = these.stream()
                    .filter(group -> !group.method().isEmpty())
                    .map(group ->
                            group.animals() + " by " + Words.of(group.method()).toLowerCase(Locale.ROOT))
                    .collect(Collectors.joining(", "));
            parts.add(animals + " " + words + (methods.isEmpty() ? "" : " (" + methods + ")"));
        }
    }
}
