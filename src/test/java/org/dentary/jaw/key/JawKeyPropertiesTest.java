package org.dentary.jaw.key;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import org.dentary.jaw.AgeingMethod;
import org.dentary.jaw.key.JawObservation.Dentine;
import org.dentary.jaw.key.JawObservation.DentineVsEnamel;
import org.dentary.jaw.key.JawObservation.Eruption;
import org.dentary.jaw.key.JawObservation.Generation;
import org.dentary.jaw.key.JawObservation.Presence;
import org.dentary.jaw.key.JawObservation.RearCusp;
import org.dentary.jaw.key.JawObservation.RowSeen;
import org.dentary.jaw.key.JawObservation.SixthTooth;
import org.dentary.jaw.key.JawObservation.Stain;
import org.dentary.jaw.key.JawObservation.ThirdTooth;
import org.dentary.jaw.key.JawObservation.ToothDetail;

/** What must hold of the key whatever is put to it. */
class JawKeyPropertiesTest {

    private static final Integer[] COUNTS = {null, 0, 1, 2, 3, 4, 5, 6};
    private static final Integer[] CUSPS = {null, 2, 3};
    private static final Eruption[] ERUPTIONS = {null, Eruption.NOT_ERUPTED, Eruption.ERUPTING, Eruption.FULL};
    private static final Dentine[] DENTINES = {null, Dentine.NOT_EXPOSED, Dentine.TRACE, Dentine.DEFINED};
    private static final Boolean[] CAPS = {null, false, true};

    /** Every combination of the key's own cues, an absent one once not given and once unsure. */
    @Example
    void everyCombinationOfCuesAnswersWithoutFault() {
        int asked = 0;
        int answered = 0;
        for (RowSeen row : RowSeen.values()) {
            for (Integer count : COUNTS) {
                for (Integer cusps : CUSPS) {
                    for (Boolean cap : CAPS) {
                        for (Eruption third : ERUPTIONS) {
                            for (Dentine thirdDentine : DENTINES) {
                                for (Eruption sixth : ERUPTIONS) {
                                    for (Dentine sixthDentine : DENTINES) {
                                        ThirdTooth three = new ThirdTooth(cusps, third, thirdDentine, cap, null);
                                        SixthTooth six = new SixthTooth(sixth, sixthDentine);
                                        asked++;
                                        check(observation(row, count, three, six, false));
                                        answered += check(observation(row, count, three, six, true));
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
        assertEquals(36_864, asked);
        assertEquals(asked, answered, "whoever says unsure is always answered");
    }

    @Property(tries = 3000, seed = "20261126")
    void everyDetailOfTheTeethAnswersWithoutFault(
            @ForAll("observations") JawObservation jaw, @ForAll("contexts") JawContext context) {
        if (JawKey.problems(jaw, context, AgeingPlan.NORTHERN).isEmpty()) {
            holds(jaw, JawKey.answer(jaw, context, AgeingPlan.NORTHERN));
        }
    }

    @Property(tries = 3000, seed = "20261126")
    void addingWearNeverLowersTheClass(@ForAll("observations") JawObservation jaw) {
        AgeClass before = ageClass(jaw);
        for (JawObservation worn : wornFurther(jaw)) {
            AgeClass after = ageClass(worn);
            assertFalse(
                    before != AgeClass.UNKNOWN && after != AgeClass.UNKNOWN && after.compareTo(before) < 0,
                    () -> before + " became " + after + " in " + worn);
        }
    }

    /** The same without chance: the cues alone, where a class is most often given. */
    @Example
    void addingWearNeverLowersTheClassOfAnyPlainReading() {
        int compared = 0;
        for (Integer cusps : new Integer[] {2, 3}) {
            for (Boolean cap : CAPS) {
                for (Eruption third : ERUPTIONS) {
                    for (Dentine thirdDentine : DENTINES) {
                        for (Eruption sixth : ERUPTIONS) {
                            for (Dentine sixthDentine : DENTINES) {
                                JawObservation jaw = observation(
                                        RowSeen.WHOLE,
                                        6,
                                        new ThirdTooth(cusps, third, thirdDentine, cap, null),
                                        new SixthTooth(sixth, sixthDentine),
                                        true);
                                for (JawObservation worn : wornFurther(jaw)) {
                                    AgeClass before = ageClass(jaw);
                                    AgeClass after = ageClass(worn);
                                    if (before != AgeClass.UNKNOWN && after != AgeClass.UNKNOWN) {
                                        compared++;
                                        assertTrue(after.compareTo(before) >= 0, before + " became " + after);
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
        assertTrue(compared > 50, compared + " compared");
    }

    /** Published schedules differ by months, so no date may take a class away. */
    @Example
    void timingAloneNeverRefuses() {
        for (LocalDate day = LocalDate.of(2026, 6, 1); day.getYear() < 2028; day = day.plusDays(1)) {
            for (JawObservation clear : clearReadings(day)) {
                JawAnswer answer = JawKey.answer(clear, JawContext.NONE, AgeingPlan.NORTHERN);
                assertNotNull(answer.keyClass(), clear::toString);
                assertEquals(Certainty.CLEAR, answer.certainty());
                assertTrue(answer.ageInMonths().from() >= 0);
                Double to = answer.ageInMonths().to();
                assertTrue(to == null || to >= answer.ageInMonths().from(), answer::toString);
            }
        }
    }

    private static int check(JawObservation jaw) {
        List<JawProblem> problems = JawKey.problems(jaw, JawContext.NONE, AgeingPlan.NORTHERN);
        problems.forEach(problem -> assertEquals("REQUIRED", problem.rule()));
        assertEquals(problems.isEmpty(), JawKey.next(jaw).isEmpty());
        if (!problems.isEmpty()) {
            return 0;
        }
        holds(jaw, JawKey.answer(jaw, JawContext.NONE, AgeingPlan.NORTHERN));
        return 1;
    }

    private static void holds(JawObservation jaw, JawAnswer answer) {
        boolean refused = answer.contradictions().stream().anyMatch(found -> found.severity() == Severity.REFUSE);
        if (refused || jaw.rowSeen() == RowSeen.FRONT_ONLY || jaw.isUnsure("cheekTeeth")) {
            assertNull(answer.keyClass(), jaw::toString);
        }
        if (refused) {
            assertTrue(answer.needsSecondReader());
        }
        assertEquals(answer.keyClass() == null, answer.ageClass() == AgeClass.UNKNOWN);
        assertEquals(answer.keyClass() == null, answer.certainty() == Certainty.UNRESOLVED, jaw::toString);
        assertEquals(answer.keyClass() == null, answer.novemberMonths() == null);
        if (answer.certainty() == Certainty.CLEAR) {
            assertEquals(patternOf(jaw), answer.keyClass(), jaw::toString);
            assertFalse(jaw.abnormal());
        }
        assertFalse(answer.steps().isEmpty());
        assertFalse(answer.label().isBlank());
        answer.contradictions().forEach(found -> {
            assertTrue(found.message().endsWith("."), found.message());
            found.teeth().forEach(tooth -> assertTrue(tooth >= 1 && tooth <= 6));
        });
    }

    /** The four patterns, said again and apart from the key. Common practice, no source. */
    private static KeyClass patternOf(JawObservation jaw) {
        if (jaw.cheekTeeth() == null
                || jaw.thirdTooth() == null
                || jaw.thirdTooth().cusps() == null) {
            return null;
        }
        boolean milk = jaw.thirdTooth().cusps() == 3;
        if (jaw.cheekTeeth() < 6) {
            return milk ? KeyClass.FAWN : null;
        }
        Dentine third = jaw.thirdTooth().dentine();
        Dentine sixth = jaw.sixthTooth().dentine();
        if (milk) {
            return sixth == Dentine.NOT_EXPOSED ? KeyClass.YEARLING_MILK_THIRD : null;
        }
        if (third == Dentine.NOT_EXPOSED && sixth == Dentine.NOT_EXPOSED) {
            return KeyClass.YEARLING_NEW_THIRD;
        }
        boolean bothUp =
                jaw.thirdTooth().eruption() == Eruption.FULL && jaw.sixthTooth().eruption() == Eruption.FULL;
        return bothUp && third == Dentine.DEFINED && sixth == Dentine.DEFINED ? KeyClass.ADULT : null;
    }

    private static AgeClass ageClass(JawObservation jaw) {
        return JawKey.problems(jaw, JawContext.NONE, AgeingPlan.NORTHERN).isEmpty()
                ? JawKey.answer(jaw, JawContext.NONE, AgeingPlan.NORTHERN).ageClass()
                : AgeClass.UNKNOWN;
    }

    /** The same reading with one more step of wear, at each place that can take one. */
    private static List<JawObservation> wornFurther(JawObservation jaw) {
        List<JawObservation> worn = new ArrayList<>();
        ThirdTooth third = jaw.thirdTooth();
        SixthTooth sixth = jaw.sixthTooth();
        if (third.dentine() != null && third.dentine() != Dentine.DEFINED) {
            Dentine next = Dentine.values()[third.dentine().ordinal() + 1];
            worn.add(with(
                    jaw,
                    new ThirdTooth(third.cusps(), third.eruption(), next, third.milkCapLoose(), third.stain()),
                    sixth,
                    jaw.teeth()));
        }
        if (sixth.dentine() != null && sixth.dentine() != Dentine.DEFINED) {
            Dentine next = Dentine.values()[sixth.dentine().ordinal() + 1];
            worn.add(with(jaw, third, new SixthTooth(sixth.eruption(), next), jaw.teeth()));
        }
        for (int i = 0; i < jaw.teeth().size(); i++) {
            ToothDetail tooth = jaw.teeth().get(i);
            if (tooth.dentineVsEnamel() != null && tooth.dentineVsEnamel().compareTo(DentineVsEnamel.CREST_GONE) < 0) {
                List<ToothDetail> teeth = new ArrayList<>(jaw.teeth());
                teeth.set(
                        i,
                        new ToothDetail(
                                tooth.position(),
                                tooth.presence(),
                                tooth.generation(),
                                tooth.cusps(),
                                tooth.stain(),
                                DentineVsEnamel.values()[tooth.dentineVsEnamel().ordinal() + 1],
                                tooth.rearCusp()));
                worn.add(with(jaw, third, sixth, teeth));
            }
        }
        return worn;
    }

    private static List<JawObservation> clearReadings(LocalDate diedOn) {
        return List.of(
                dated(diedOn, 4, 3, null, null, Dentine.NOT_EXPOSED),
                dated(diedOn, 6, 3, null, null, Dentine.NOT_EXPOSED),
                dated(diedOn, 6, 2, Eruption.FULL, Dentine.NOT_EXPOSED, Dentine.NOT_EXPOSED),
                dated(diedOn, 6, 2, Eruption.FULL, Dentine.DEFINED, Dentine.DEFINED));
    }

    private static JawObservation dated(
            LocalDate diedOn, int count, int cusps, Eruption third, Dentine thirdDentine, Dentine sixthDentine) {
        return new JawObservation(
                null,
                diedOn,
                null,
                count,
                new ThirdTooth(cusps, third, thirdDentine, null, null),
                new SixthTooth(count == 6 ? Eruption.FULL : Eruption.NOT_ERUPTED, sixthDentine),
                null,
                null,
                null,
                null,
                null,
                null);
    }

    private static JawObservation observation(
            RowSeen row, Integer count, ThirdTooth third, SixthTooth sixth, boolean unsureWhereAbsent) {
        List<String> unsure = new ArrayList<>();
        if (unsureWhereAbsent) {
            name(unsure, "cheekTeeth", count);
            name(unsure, "thirdTooth.cusps", third.cusps());
            name(unsure, "thirdTooth.eruption", third.eruption());
            name(unsure, "thirdTooth.dentine", third.dentine());
            name(unsure, "thirdTooth.milkCapLoose", third.milkCapLoose());
            name(unsure, "sixthTooth.eruption", sixth.eruption());
            name(unsure, "sixthTooth.dentine", sixth.dentine());
        }
        return new JawObservation(null, null, row, count, third, sixth, null, unsure, null, null, null, null);
    }

    private static void name(List<String> unsure, String field, Object value) {
        if (value == null) {
            unsure.add(field);
        }
    }

    private static JawObservation with(
            JawObservation jaw, ThirdTooth third, SixthTooth sixth, List<ToothDetail> teeth) {
        return new JawObservation(
                jaw.species(),
                jaw.diedOn(),
                jaw.rowSeen(),
                jaw.cheekTeeth(),
                third,
                sixth,
                teeth,
                jaw.unsure(),
                jaw.abnormal(),
                jaw.examinersClass(),
                jaw.examinersYearClass(),
                jaw.examinersCertainty());
    }

    @Provide
    Arbitrary<JawObservation> observations() {
        Arbitrary<ThirdTooth> third = Combinators.combine(
                        Arbitraries.of(CUSPS),
                        Arbitraries.of(ERUPTIONS),
                        Arbitraries.of(DENTINES),
                        Arbitraries.of(CAPS),
                        Arbitraries.of(Stain.values()).injectNull(0.3))
                .as(ThirdTooth::new);
        Arbitrary<SixthTooth> sixth = Combinators.combine(Arbitraries.of(ERUPTIONS), Arbitraries.of(DENTINES))
                .as(SixthTooth::new);
        Arbitrary<List<ToothDetail>> teeth = details().list().ofMaxSize(4);
        Arbitrary<List<String>> unsure = Arbitraries.of(
                        "cheekTeeth", "thirdTooth.cusps", "thirdTooth.dentine", "sixthTooth", "sixthTooth.dentine")
                .list()
                .ofMaxSize(2);
        Arbitrary<LocalDate> diedOn = Arbitraries.integers()
                .between(0, 900)
                .map(days -> LocalDate.of(2025, 1, 1).plusDays(days))
                .injectNull(0.3);
        return Combinators.combine(
                        diedOn,
                        Arbitraries.frequencyOf(
                                Tuple.of(9, Arbitraries.just(RowSeen.WHOLE)),
                                Tuple.of(1, Arbitraries.just(RowSeen.FRONT_ONLY))),
                        Arbitraries.integers().between(3, 6),
                        third,
                        sixth,
                        teeth,
                        unsure,
                        Arbitraries.of(AgeClass.values()).injectNull(0.5))
                .as((died, row, count, three, six, detail, notSure, examiner) -> new JawObservation(
                        null,
                        died,
                        row,
                        count,
                        three,
                        six,
                        detail,
                        notSure,
                        Objects.hash(three, six) % 5 == 0,
                        examiner,
                        examiner == AgeClass.ADULT ? YearClass.THREE_AND_HALF : null,
                        Certainty.CLEAR));
    }

    private static Arbitrary<ToothDetail> details() {
        return Combinators.combine(
                        Arbitraries.integers().between(1, 6),
                        Arbitraries.of(Presence.values()).injectNull(0.3),
                        Arbitraries.of(Generation.values()).injectNull(0.6),
                        Arbitraries.of(CUSPS),
                        Arbitraries.of(DentineVsEnamel.values()).injectNull(0.3),
                        Arbitraries.of(RearCusp.values()).injectNull(0.5))
                .as((position, presence, generation, cusps, dentine, rear) -> new ToothDetail(
                        position,
                        presence,
                        generation,
                        position == 3 ? cusps : null,
                        null,
                        dentine,
                        position == 6 ? rear : null));
    }

    @Provide
    Arbitrary<JawContext> contexts() {
        return Combinators.combine(
                        Arbitraries.of(JawContext.Sex.values()).injectNull(0.3),
                        Arbitraries.of(JawContext.Antlers.values()).injectNull(0.3),
                        Arbitraries.doubles().between(1, 200).injectNull(0.3),
                        Arbitraries.of(AgeClass.values()).injectNull(0.5),
                        Arbitraries.of(AgeingMethod.values()).injectNull(0.5),
                        Arbitraries.of(YearClass.values()).injectNull(0.3))
                .as((sex, antlers, mass, otherSide, method, yearClass) -> new JawContext(
                        new JawContext.Animal(
                                LocalDate.of(2026, 11, 20),
                                sex,
                                JawContext.SexEvidence.HEAD_ONLY,
                                antlers,
                                true,
                                150,
                                mass),
                        new JawContext.Exam(null, null, null, JawContext.JawState.FRESH, method, otherSide),
                        new JawContext.Others(
                                List.of(new JawContext.OtherAge(AgeingMethod.CEMENTUM, null, yearClass)),
                                method,
                                null)));
    }
}
