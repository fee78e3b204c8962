package org.dentary.jaw.key;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.jaw.key.JawAnswer.Contradiction;
import org.dentary.jaw.key.JawAnswer.Step;
import org.dentary.jaw.key.JawObservation.ToothDetail;

/**
 * The key: from what was seen in a jaw to an age class, the way it was reached and what speaks against it. Pure: no clock, no
 * store.
 *
 * <p>Ages are estimates. They are not for enforcement or prizes.
 */
public final class JawKey {

    /** Version of the key and its rules, kept with every reading. */
    public static final String RULE_SET_VERSION = "2026.1";

    private static final Set<String> FIELDS = new TreeSet<>(Set.of(
            "rowSeen",
            "cheekTeeth",
            "thirdTooth",
            "thirdTooth.cusps",
            "thirdTooth.eruption",
            "thirdTooth.dentine",
            "thirdTooth.milkCapLoose",
            "thirdTooth.stain",
            "sixthTooth",
            "sixthTooth.eruption",
            "sixthTooth.dentine"));

    private JawKey() {}

    /**
     * Why an observation cannot be answered: values out of range, a field that the key needs and that is neither given nor named
     * in {@code unsure}, an exam before death or in the future (J28), a jaw that is also another animal's (J27).
     *
     * @return in the order of the fields; empty when {@link #answer} may be called
     */
    public static List<JawProblem> problems(JawObservation jaw, JawContext context, AgeingPlan plan) {
        List<JawProblem> problems = new ArrayList<>();
        ranges(jaw, problems);
        belonging(jaw, context, problems);
        if (problems.isEmpty() && plan.reviewedSpecies().contains(jaw.species())) {
            missing(jaw, problems);
        }
        return List.copyOf(problems);
    }

    /**
     * The key's answer. A contradiction that refuses leaves no class, however clear the steps; one that asks or flags keeps it.
     *
     * @throws IllegalArgumentException when {@link #problems} finds any
     */
    public static JawAnswer answer(JawObservation jaw, JawContext context, AgeingPlan plan) {
        List<JawProblem> problems = problems(jaw, context, plan);
        if (!problems.isEmpty()) {
            throw new IllegalArgumentException(problems.get(0).message());
        }
        if (!plan.reviewedSpecies().contains(jaw.species())) {
            return withoutKey(jaw.species());
        }
        KeyTrail.End end = KeyWalk.of(jaw);
        JawFacts facts = new JawFacts(jaw, context, plan, end.keyClass());
        List<JawRule> speaking =
                JawRules.ALL.stream().filter(rule -> rule.seen().test(facts)).toList();
        List<Contradiction> contradictions = speaking.stream()
                .map(rule -> rule.of(facts))
                .flatMap(Optional::stream)
                .toList();
        List<String> refusals = contradictions.stream()
                .filter(contradiction -> contradiction.severity() == Severity.REFUSE)
                .map(Contradiction::rule)
                .distinct()
                .toList();
        if (!refusals.isEmpty()) {
            return new JawAnswer(
                    null,
                    AgeClass.UNKNOWN,
                    "Disputed: the reading contradicts itself (" + String.join(", ", refusals)
                            + "); look again at the teeth named",
                    null,
                    null,
                    Certainty.UNRESOLVED,
                    end.steps(),
                    contradictions,
                    true);
        }
        boolean lowered = jaw.abnormal() || speaking.stream().anyMatch(JawRule::lowersCertainty);
        Certainty certainty = end.certainty() == Certainty.CLEAR && lowered ? Certainty.PROBABLE : end.certainty();
        boolean secondReader = jaw.abnormal()
                || certainty == Certainty.UNRESOLVED
                || (certainty == Certainty.PROBABLE && plan.probableNeedsSecondReader())
                || speaking.stream().anyMatch(JawRule::secondReader);
        KeyClass keyClass = end.keyClass();
        AgeClass ageClass = keyClass == null ? AgeClass.UNKNOWN : keyClass.ageClass();
        LocalDate diedOn = facts.diedOn();
        return new JawAnswer(
                keyClass,
                ageClass,
                end.label(),
                keyClass == null ? null : keyClass.novemberMonths(),
                diedOn == null ? null : plan.ageInMonths(ageClass, diedOn),
                certainty,
                end.steps(),
                contradictions,
                secondReader);
    }

    /**
     * What a rule says, in the words that a reading gets.
     *
     * @param rule such as {@code J14}
     * @throws IllegalArgumentException if there is no such rule
     */
    public static String message(String rule) {
        return JawRules.ALL.stream()
                .filter(one -> one.id().equals(rule))
                .map(JawRule::message)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no rule " + rule));
    }

    /**
     * The question the key would ask next of an observation that is still being made.
     *
     * @return empty when the walk has reached an end
     */
    public static Optional<KeyQuestion> next(JawObservation jaw) {
        return Optional.ofNullable(KeyWalk.of(jaw).missing());
    }

    /** The steps of an observation that is still being made, in order. */
    public static List<Step> stepsSoFar(JawObservation jaw) {
        return List.copyOf(KeyWalk.of(jaw).steps());
    }

    private static JawAnswer withoutKey(String species) {
        String label = "No reviewed key for this species";
        return new JawAnswer(
                null,
                AgeClass.UNKNOWN,
                label,
                null,
                null,
                Certainty.UNRESOLVED,
                List.of(new Step("Is there a reviewed key for the species?", species, label)),
                List.of(),
                false);
    }

    private static void ranges(JawObservation jaw, List<JawProblem> problems) {
        range("cheekTeeth", jaw.cheekTeeth(), 0, 6, problems);
        if (jaw.thirdTooth() != null) {
            range("thirdTooth.cusps", jaw.thirdTooth().cusps(), 2, 3, problems);
        }
        for (int i = 0; i < jaw.teeth().size(); i++) {
            ToothDetail tooth = jaw.teeth().get(i);
            String path = "teeth[" + i + "].";
            if (tooth.position() == null) {
                problems.add(
                        new JawProblem(path + "position", "REQUIRED", "Give the position, 1 to 6 from the front."));
            }
            range(path + "position", tooth.position(), 1, 6, problems);
            range(path + "cusps", tooth.cusps(), 2, 3, problems);
            if (tooth.cusps() != null && tooth.position() != null && tooth.position() != 3) {
                problems.add(new JawProblem(
                        path + "cusps",
                        "ONLY_POSITION_3",
                        "Cusps are counted on position 3 only; leave them out here."));
            }
            if (tooth.rearCusp() != null && tooth.position() != null && tooth.position() != 6) {
                problems.add(new JawProblem(
                        path + "rearCusp", "ONLY_POSITION_6", "Only position 6 has a rear cusp; leave it out here."));
            }
            if (jaw.teeth().subList(0, i).stream()
                    .anyMatch(before ->
                            before.position() != null && before.position().equals(tooth.position()))) {
                problems.add(new JawProblem(
                        path + "position",
                        "TWICE",
                        "Position " + tooth.position() + " is given twice; give each position once."));
            }
        }
        for (int i = 0; i < jaw.unsure().size(); i++) {
            if (!FIELDS.contains(jaw.unsure().get(i))) {
                problems.add(new JawProblem(
                        "unsure[" + i + "]",
                        "ALLOWED",
                        "\"" + jaw.unsure().get(i) + "\" is no field of the key; allowed are "
                                + String.join(", ", FIELDS) + "."));
            }
        }
    }

    private static void range(String field, Integer value, int least, int most, List<JawProblem> problems) {
        if (value != null && (value < least || value > most)) {
            problems.add(new JawProblem(
                    field, "RANGE", field + " is " + value + "; allowed is " + least + " to " + most + "."));
        }
    }

    private static void belonging(JawObservation jaw, JawContext context, List<JawProblem> problems) {
        JawFacts facts = new JawFacts(jaw, context, AgeingPlan.NORTHERN, null);
        Instant now = context.exam().now();
        if (now != null
                && jaw.diedOn() != null
                && jaw.diedOn().isAfter(LocalDate.ofInstant(now, context.exam().zone()))) {
            problems.add(new JawProblem(
                    "diedOn", "FUTURE", "diedOn is " + jaw.diedOn() + ", which is still to come; check the date."));
        }
        if (context.others().jawAlsoOn() != null) {
            problems.add(new JawProblem(
                    "jaw",
                    "J27",
                    "This jaw or its photograph is already " + context.others().jawAlsoOn()
                            + "; one animal has one jaw. Check the labels of both."));
        }
        Instant readAt = context.exam().readAt();
        if (facts.daysToReading() != null && facts.daysToReading() < 0) {
            problems.add(new JawProblem(
                    "readAt",
                    "J28",
                    "The jaw was read at " + readAt + ", before the animal died on " + facts.diedOn()
                            + "; correct the one that is wrong."));
        }
        if (readAt != null && now != null && readAt.isAfter(now)) {
            problems.add(new JawProblem(
                    "readAt", "J28", "The jaw was read at " + readAt + ", which is still to come; check the time."));
        }
    }

    private static void missing(JawObservation jaw, List<JawProblem> problems) {
        KeyQuestion first = KeyWalk.of(jaw).missing();
        if (first == null) {
            return;
        }
        boolean cuspsToo = first == KeyQuestion.CHEEK_TEETH
                && jaw.thirdCusps() == null
                && !jaw.isUnsure(KeyQuestion.THIRD_CUSPS.field());
        Stream.of(first, cuspsToo ? KeyQuestion.THIRD_CUSPS : first)
                .distinct()
                .map(question -> new JawProblem(
                        question.field(),
                        "REQUIRED",
                        "The key needs " + question.field() + ": " + question.question() + " Give "
                                + question.answers().stream()
                                        .map(KeyQuestion.Answer::value)
                                        .filter(value -> !value.equals("CAP"))
                                        .collect(Collectors.joining(", "))
                                + ", or name it in unsure."))
                .forEach(problems::add);
    }
}
