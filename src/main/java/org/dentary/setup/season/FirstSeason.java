package org.dentary.setup.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.dentary.setup.list.SetUpList;

/**
 * What a service that was just set up still needs before the first deer, in the order in which it can be done.
 *
 * @param steps every step, done or not
 */
record FirstSeason(List<Step> steps) {

    /**
     * One thing to do.
     *
     * @param words what it is
     * @param href where it is done
     * @param done whether it is done
     */
    record Step(String words, String href, boolean done) {}

    /**
     * The steps as they stand.
     *
     * @param counts rows of each list
     * @param named whether the account that asks names a person, as a review needs
     * @param protocolWritten whether the plan holds a protocol's text
     * @param protocolReviewed whether a named person reviewed it
     * @param cautions cautions in force that nobody reviewed
     */
    static FirstSeason of(
            Map<SetUpList, Integer> counts,
            boolean named,
            boolean protocolWritten,
            boolean protocolReviewed,
            int cautions) {
        List<Step> steps = new ArrayList<>();
        Arrays.stream(SetUpList.values())
                .filter(SetUpList::begins)
                .forEach(list -> steps.add(
                        list == SetUpList.ACCOUNTS
                                ? new Step(
                                        "Accounts: yours with your person, then sign in with it",
                                        href(list),
                                        named && counts.getOrDefault(list, 0) > 1)
                                : new Step(list.words(), href(list), counts.getOrDefault(list, 0) > 0)));
        steps.add(new Step("Write the protocol", SettingsPage.href("PROTOCOL_TEXT"), protocolWritten));
        steps.add(new Step("Review the protocol", "/season/review#protocol", protocolReviewed));
        steps.add(new Step(
                cautions == 0 ? "Review the cautions" : "Review the cautions: " + cautions + " to go",
                "/season/review#cautions",
                cautions == 0));
        steps.add(new Step("Open the season for intake", "/season#seasons", false));
        return new FirstSeason(List.copyOf(steps));
    }

    /** How many steps are done. */
    public long done() {
        return steps.stream().filter(Step::done).count();
    }

    /** The first step that is not done. */
    public Step next() {
        return steps.stream().filter(step -> !step.done()).findFirst().orElseThrow();
    }

    private static String href(SetUpList list) {
        return "/season/lists/" + list.path();
    }
}
