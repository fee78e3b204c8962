package org.dentary.prevalence.detection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.dentary.plan.RiskWeightView;
import org.dentary.plan.UnitView;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.detection.UnitRules.Known;
import org.dentary.prevalence.detection.UnitRules.SeasonSample;
import org.dentary.prevalence.question.Step;
import org.junit.jupiter.api.Test;

/** Expected values: {@code src/test/resources/prevalence/chance.R}, R 4.2.2, unless a line names another source. */
class UnitRulesTest {
    private static final UnitView UNIT = new UnitView("U1", "Unit one", null, null);
    private static final Map<String, String> SEASONS = Map.of("S1", "Year one", "S2", "Year two");
    private static final SampleConcerns CONCERNS = new SampleConcerns(30, 0.8);

    private static Assumptions plan(double designPrevalence, double sensitivity, Integer herd, String weights) {
        return new Assumptions(
                designPrevalence, 0.95, sensitivity, "Invented 2026", herd, "Invented count", 0.5, 0.05, weights);
    }

    private static SampledGroup group(String age, String sex, Step step, int animals, int detected) {
        return new SampledGroup("S", "U1", age, sex, "HUNTER_HARVEST", "NONE_SEEN", "ST1", step, animals, detected);
    }

    /** Half males, half females (the odd one male), all adults. */
    private static Sample tested(int animals, int detected) {
        List<SampledGroup> groups = new ArrayList<>();
        groups.add(group("ADULT", "MALE", Step.COUNTED, animals - animals / 2, detected));
        groups.add(group("YEARLING", "FEMALE", Step.COUNTED, animals / 2, 0));
        return new Sample(groups);
    }

    private static UnitChance chance(Assumptions plan, Sample now, SeasonSample... past) {
        return UnitRules.chance(
                new Known(UNIT, List.of(past), new SeasonSample("S3", now, plan), null, 1, Map.of(), SEASONS),
                scope("HUNTER_HARVEST"),
                0.95,
                CONCERNS);
    }

    private static RiskWeights weights() {
        return new RiskWeights(
                "W1",
                List.of(
                        weight("ADULT", "MALE", "2.5"),
                        weight("ADULT", "FEMALE", "1"),
                        weight("YEARLING", "MALE", "1"),
                        weight("YEARLING", "FEMALE", "1"),
                        weight("FAWN", "FEMALE", "0.25"),
                        // Of these a report of healthy hunters' animals counts none.
                        weight("ADULT", "MALE", "20", "HUNTER_HARVEST", "SEEN"),
                        weight("ADULT", "MALE", "5", "VEHICLE", "NONE_SEEN")));
    }

    private static RiskWeightView weight(String age, String sex, String risk) {
        return weight(age, sex, risk, "HUNTER_HARVEST", "NONE_SEEN");
    }

    private static RiskWeightView weight(String age, String sex, String risk, String source, String signs) {
        return new RiskWeightView("W1", "CWD", "DEER", age, sex, source, signs, new BigDecimal(risk), null, "Invented");
    }

    @Test
    void followsTheProbabilityOverSeasons() {
        Assumptions plan = plan(.01, .95, null, "");
        UnitChance chance = chance(
                plan,
                tested(120, 0),
                new SeasonSample("S1", tested(130, 0), plan),
                new SeasonSample("S2", tested(150, 0), plan));
        double[][] expected = {
            {.710877171676, .5, .775721271882},
            {.761124295344, .736935208288, .921428166894},
            {.681919104829, .875356758549, .956670506199}
        };
        for (int i = 0; i < 3; i++) {
            assertEquals(expected[i][0], chance.seasons().get(i).sensitivity(), 1e-9);
            assertEquals(expected[i][1], chance.seasons().get(i).prior(), 1e-9);
            assertEquals(expected[i][2], chance.seasons().get(i).posterior(), 1e-9);
        }
        assertEquals(.956670506199, chance.probabilityBelow(), 1e-9);
        assertEquals(.681919104829, chance.probability(), 1e-9);
        assertEquals(.0259530537428, chance.upperLimit(), 1e-9);
        assertEquals(314, chance.target());
        assertEquals(194, chance.more());
        assertEquals(UnitState.BELOW_TARGET, chance.state());
        // P*, prior, introduction and all they rest on stand in one line
        for (String said :
                List.of("95.7 %", "1 %", "prior 50 %", "introduction 5 %", "95 % (Invented 2026)", "before Year one")) {
            assertTrue(chance.belowSentence().contains(said), () -> said + " in " + chance.belowSentence());
        }
    }

    @Test
    void aHerdOfKnownSizeIsCountedExactly() {
        UnitChance chance = chance(plan(.01, .95, 400, ""), tested(120, 0));
        assertEquals(4, chance.assumptions().infected());
        assertEquals(.740107907065, chance.probability(), 1e-9);
        assertEquals(222, chance.target());
        assertEquals(102, chance.more());
        // A herd of 100 with 5 infected and a perfect test: 45 tested give .9538, 44 give .9493.
        assertEquals(
                UnitState.TARGET_REACHED,
                chance(plan(.05, 1, 100, ""), tested(45, 0)).state());
        UnitChance short_ = chance(plan(.05, 1, 100, ""), tested(44, 0));
        assertEquals(.949263622975, short_.probability(), 1e-9);
        assertEquals(1, short_.more());
    }

    @Test
    void theClassicNumberReachesTheTargetAndOneFewerDoesNot() {
        // 299 for 1 % at 95 %: textbooks, from memory
        Assumptions plan = plan(.01, 1, null, "");
        assertEquals(UnitState.TARGET_REACHED, chance(plan, tested(299, 0)).state());
        assertNull(chance(plan, tested(299, 0)).more());
        assertEquals(1, chance(plan, tested(298, 0)).more());
        assertTrue(chance(plan, tested(299, 0)).sentence().contains("does not show absence"));
    }

    @Test
    void aDetectionEndsTheQuestion() {
        Assumptions plan = plan(.01, .95, null, "");
        UnitChance now = chance(plan, tested(120, 2));
        assertEquals(UnitState.DETECTED, now.state());
        assertNull(now.probability());
        assertNull(now.upperLimit());
        assertNull(now.more());
        assertEquals(0.0, now.probabilityBelow());
        assertTrue(now.sentence().contains("Detection has happened"));
        UnitChance later = chance(plan, tested(120, 0), new SeasonSample("S2", tested(80, 1), plan));
        assertEquals(UnitState.DETECTED_EARLIER, later.state());
        assertEquals(0.0, later.probabilityBelow());
        assertNull(later.more());
        assertTrue(later.sentence().contains("Year two (1 of 80)"));
        UnitChance nobody = chance(plan, new Sample(List.of()), new SeasonSample("S2", tested(80, 1), plan));
        assertEquals(UnitState.DETECTED_EARLIER, nobody.state());
    }

    @Test
    void nobodyTestedRulesNothingOut() {
        UnitChance chance = chance(plan(.01, .95, null, ""), new Sample(List.of()));
        assertEquals(UnitState.NOT_SAMPLED, chance.state());
        assertNull(chance.probability());
        assertNull(chance.probabilityBelow());
        assertEquals(314, chance.more());
        assertEquals(List.of(), chance.concerns());
    }

    @Test
    void aCensusThatCannotReachTheTargetSaysSo() {
        // One infected in 10 and a test that finds 7 in 10: testing all reaches 0.7.
        UnitChance chance = chance(plan(.05, .7, 10, ""), tested(10, 0));
        assertEquals(.7, chance.probability(), 1e-12);
        assertNull(chance.target());
        assertNull(chance.more());
        assertTrue(chance.sentence().contains("even testing all 10 would not reach"));
        UnitChance many = chance(plan(.05, 1, 10, ""), tested(12, 0));
        assertTrue(many.concerns().toString().contains("put HERD_SIZE right"));
    }

    @Test
    void countsByRiskWeights() {
        Sample sample = new Sample(List.of(
                group("ADULT", "FEMALE", Step.COUNTED, 60, 0),
                group("FAWN", "FEMALE", Step.COUNTED, 40, 0),
                group("ADULT", "MALE", Step.COUNTED, 30, 0)));
        Assumptions plan = plan(.01, .92, null, "W1");
        Known known = new Known(UNIT, List.of(), new SeasonSample("S3", sample, plan), weights(), 1, Map.of(), SEASONS);
        UnitChance chance = UnitRules.chance(known, scope("HUNTER_HARVEST"), 0.95, CONCERNS);
        assertEquals(145, chance.points().points(), 1e-9);
        // 325.6 points for 1 %, 95 %, sensitivity .92
        assertEquals(325.623073212, chance.points().required(), 1e-8);
        assertEquals(.739387240298, chance.points().probability(), 1e-9);
        assertEquals(.0224567636698, chance.points().upperLimit(), 1e-9);
        assertEquals(.739387240298, chance.seasons().get(0).sensitivity(), 1e-9);
        assertEquals(71, chance.more());
        TakeNext next = TakeNextRules.of(known, chance, scope("HUNTER_HARVEST"), CONCERNS, List.of())
                .orElseThrow();
        assertEquals(
                List.of(71, 179, 179),
                next.choices().stream().map(TakeNext.Choice::more).toList());
        assertEquals(
                "71 more male adults (hunter harvest)", next.choices().get(0).words());
        assertEquals(
                List.of("ADULT MALE"),
                TakeNextRules.of(known, chance, scope("VEHICLE"), CONCERNS, List.of()).orElseThrow().choices().stream()
                        .map(choice -> choice.ageClass() + " " + choice.sex())
                        .toList());
        assertTrue(TakeNextRules.of(known, chance, scope("PREDATOR"), CONCERNS, List.of())
                .isEmpty());
        // As many as the list for the stations asks for.
        assertEquals(next.choices().get(0).more(), chance.moreAfterPending());
    }

    @Test
    void anUnknownClassEarnsTheLowestWeightItMayHaveAndAMissingOneIsRefused() {
        RiskWeights weights = weights();
        assertEquals(
                new BigDecimal("0.25"),
                weights.classOf(group("UNKNOWN", "UNKNOWN", Step.COUNTED, 1, 0))
                        .orElseThrow()
                        .relativeRisk());
        assertEquals(
                BigDecimal.ONE,
                weights.classOf(group("ADULT", "UNKNOWN", Step.COUNTED, 1, 0))
                        .orElseThrow()
                        .relativeRisk());
        InvalidInput refusal = assertThrows(
                InvalidInput.class,
                () -> weights.requireFor(List.of(
                        group("FAWN", "MALE", Step.COUNTED, 3, 0), group("ADULT", "MALE", Step.COUNTED, 9, 0))));
        assertEquals(1, refusal.errors().size());
        assertTrue(refusal.getMessage().contains("fawn, male, hunter harvest, no signs seen (3 tested)"));
    }

    @Test
    void sparseAndOneSidedSamplesSayWhyTheNumberDoesNotHold() {
        Sample males = new Sample(
                List.of(group("ADULT", "MALE", Step.COUNTED, 18, 0), group("YEARLING", "FEMALE", Step.COUNTED, 2, 0)));
        String concerns = chance(plan(.01, .95, null, ""), males).concerns().toString();
        assertTrue(concerns.contains("20 tested, fewer than 30"), concerns);
        assertTrue(concerns.contains("18 of 20 tested are male"), concerns);
        assertTrue(concerns.contains("18 of 20 tested are of age class adult"), concerns);
        assertEquals(List.of(), chance(plan(.01, .95, null, ""), tested(40, 0)).concerns());
        // exactly the share is not above it
        Sample even = new Sample(
                List.of(group("ADULT", "MALE", Step.COUNTED, 32, 0), group("YEARLING", "FEMALE", Step.COUNTED, 8, 0)));
        assertEquals(List.of(), chance(plan(.01, .95, null, ""), even).concerns());
    }

    @Test
    void pendingAnimalsShortenTheListAndTheMissingSideComesFirst() {
        List<SampledGroup> groups =
                List.of(group("ADULT", "MALE", Step.COUNTED, 100, 0), group("ADULT", "MALE", Step.PENDING, 50, 0));
        Known known = new Known(
                UNIT,
                List.of(),
                new SeasonSample("S3", new Sample(groups), plan(.01, .95, null, "")),
                null,
                1,
                Map.of(),
                SEASONS);
        UnitChance chance = UnitRules.chance(known, scope("HUNTER_HARVEST"), 0.95, CONCERNS);
        assertEquals(214, chance.more());
        assertEquals(164, chance.moreAfterPending());
        TakeNext.Choice choice = TakeNextRules.of(known, chance, scope("HUNTER_HARVEST"), CONCERNS, List.of())
                .orElseThrow()
                .choices()
                .get(0);
        assertEquals("FEMALE", choice.sex());
        assertEquals("164 more female animals (hunter harvest)", choice.words());
    }

    private static org.dentary.prevalence.question.Scope scope(String source) {
        return new org.dentary.prevalence.question.Scope(
                List.of("WILD"), List.of(source), List.of("NONE_SEEN"), List.of("VOLUNTARY"));
    }
}
