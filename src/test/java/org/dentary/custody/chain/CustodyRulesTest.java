package org.dentary.custody.chain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.dentary.custody.chain.Concerns.Why;
import org.dentary.platform.problem.InvalidInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** The rules of custody on chains written out by hand; limits and times are invented. */
class CustodyRulesTest {
    private static final Instant EIGHT = Instant.parse("2026-11-14T08:00:00Z");
    private static final Duration TWELVE_HOURS = Duration.ofHours(12);
    private static final Duration TEN_MINUTES = Duration.ofMinutes(10);
    private static final Holder ANN = Holder.person("ANN");
    private static final Holder BEN = Holder.person("BEN");
    private static final Holder CLEO = Holder.person("CLEO");
    private static final Limits.Temperatures CHILLED = new Limits.Temperatures(BigDecimal.ZERO, BigDecimal.valueOf(8));

    private final List<Step> chain = new ArrayList<>();

    @Test
    void exactlyTheAllowedTimeIsNotLateAndASecondMoreIs() {
        assertFalse(CustodyRules.isLate(EIGHT, EIGHT.plus(TWELVE_HOURS), TWELVE_HOURS));
        assertTrue(CustodyRules.isLate(EIGHT, EIGHT.plus(TWELVE_HOURS).plusSeconds(1), TWELVE_HOURS));
    }

    @Test
    void refusesTheFutureBeyondSkewAndAnEntryBeforeItsEvent() {
        CustodyRules.requirePossible(EIGHT.plus(TEN_MINUTES), EIGHT, EIGHT, TEN_MINUTES);
        assertRule("IN_FUTURE", () -> CustodyRules.requirePossible(at(0, 11), at(0, 11), EIGHT, TEN_MINUTES));
        assertRule("IN_FUTURE", () -> CustodyRules.requirePossible(EIGHT, at(0, 11), EIGHT, TEN_MINUTES));
        assertRule("ENTERED_TOO_EARLY", () -> CustodyRules.requirePossible(at(1, 0), EIGHT, at(2, 0), TEN_MINUTES));
    }

    @Test
    void aLateEntryNeedsAReasonAndATimelyOneNone() {
        CustodyRules.requireReasonIfLate(EIGHT, at(12, 0), TWELVE_HOURS, null);
        CustodyRules.requireReasonIfLate(EIGHT, at(13, 0), TWELVE_HOURS, "no signal at the station");
        assertRule("LATE_NEEDS_REASON", () -> CustodyRules.requireReasonIfLate(EIGHT, at(13, 0), TWELVE_HOURS, "  "));
    }

    @Test
    void nothingHappensBeforeCollection() {
        CustodyRules.requireAfterCollection("CODE", EIGHT, EIGHT);
        assertRule(
                "BEFORE_COLLECTION", () -> CustodyRules.requireAfterCollection("CODE", EIGHT.minusSeconds(1), EIGHT));
    }

    @Test
    void whoHeldIsReadInTheOrderOfHappeningNotOfRecording() {
        moved(CustodyKind.COLLECTED, at(0, 0), null, ANN);
        moved(CustodyKind.HANDOVER_ACCEPTED, at(4, 0), ANN, CLEO);
        moved(CustodyKind.HANDOVER_ACCEPTED, at(2, 0), ANN, BEN);
        assertEquals(Optional.empty(), CustodyRules.holderAt(chain, at(0, 0).minusSeconds(1)));
        assertEquals(Optional.of(ANN), CustodyRules.holderAt(chain, at(1, 59)));
        assertEquals(Optional.of(BEN), CustodyRules.holderAt(chain, at(2, 0)));
        assertEquals(Optional.of(CLEO), CustodyRules.holderAt(chain, at(9, 0)));
        assertEquals(2, CustodyRules.lastMove(chain).orElseThrow().sequence());
    }

    @Test
    void aGiverWhoDidNotHoldIsShown() {
        moved(CustodyKind.COLLECTED, at(0, 0), null, ANN);
        moved(CustodyKind.HANDOVER_ACCEPTED, at(4, 0), ANN, CLEO);
        assertEquals(List.of(), CustodyRules.gaps(chain, TWELVE_HOURS, at(5, 0)));
        moved(CustodyKind.HANDOVER_ACCEPTED, at(2, 0), ANN, BEN);
        List<Concerns.Gap> gaps = CustodyRules.gaps(chain, TWELVE_HOURS, at(5, 0));
        assertEquals(1, gaps.size());
        assertEquals(Why.GIVEN_BY_SOMEBODY_ELSE, gaps.get(0).why());
        assertEquals(2, gaps.get(0).sequence());
    }

    @Test
    void timeBetweenGivingAndReceivingIsAGapOnlyBeyondTheLimit() {
        moved(CustodyKind.COLLECTED, at(0, 0), null, ANN);
        relinquished(at(1, 0), at(13, 0), ANN, BEN);
        assertEquals(List.of(), CustodyRules.gaps(chain, TWELVE_HOURS, at(20, 0)));
        relinquished(at(14, 0), at(26, 1), BEN, CLEO);
        List<Concerns.Gap> gaps = CustodyRules.gaps(chain, TWELVE_HOURS, at(30, 0));
        assertEquals(1, gaps.size());
        assertEquals(Why.BETWEEN_GIVING_AND_RECEIVING, gaps.get(0).why());
        assertEquals(new BigDecimal("12.0"), gaps.get(0).hours());
        assertEquals(at(14, 0), gaps.get(0).from());
    }

    @Test
    void whatIsLostStaysAGapUntilItIsFound() {
        moved(CustodyKind.COLLECTED, at(0, 0), null, ANN);
        step(CustodyKind.LOST, at(1, 0));
        Concerns.Gap open = CustodyRules.gaps(chain, TWELVE_HOURS, at(25, 0)).get(0);
        assertEquals(Why.LOST, open.why());
        assertEquals(null, open.to());
        assertEquals(new BigDecimal("24.0"), open.hours());
        moved(CustodyKind.FOUND, at(30, 0), null, BEN);
        Concerns.Gap closed = CustodyRules.gaps(chain, TWELVE_HOURS, at(99, 0)).get(0);
        assertEquals(at(30, 0), closed.to());
    }

    @Test
    void deliveredAndCountedOnlyDaysLaterIsAGap() {
        moved(CustodyKind.COLLECTED, at(0, 0), null, ANN);
        step(CustodyKind.DELIVERED, at(1, 0));
        moved(CustodyKind.RECEIVED, at(14, 0), null, BEN);
        assertEquals(
                Why.BETWEEN_DELIVERY_AND_COUNT,
                CustodyRules.gaps(chain, TWELVE_HOURS, at(15, 0)).get(0).why());
    }

    @Test
    void temperaturesAtTheLimitKeepAndBeyondItDoNot() {
        temperature(at(1, 0), "8.0");
        temperature(at(2, 0), "8.1");
        temperature(at(3, 0), "-0.1");
        temperature(at(4, 0), "0");
        List<Concerns.Excursion> excursions = CustodyRules.excursions(chain, at -> CHILLED);
        assertEquals(
                List.of(2, 3),
                excursions.stream().map(Concerns.Excursion::sequence).toList());
        assertEquals(List.of(), CustodyRules.excursions(chain, at -> Limits.Temperatures.ANY));
    }

    @Test
    void aCorrectedTemperatureCountsAsCorrected() {
        Step read = temperature(at(1, 0), "48");
        assertEquals(1, CustodyRules.excursions(chain, at -> CHILLED).size());
        correction(read, "4.8");
        assertEquals(List.of(), CustodyRules.excursions(chain, at -> CHILLED));
    }

    @Test
    void aSealThatIsNotTheOnePutOnIsAMismatchAndSpellingIsNot() {
        seal(CustodyKind.TAMPER_SEAL_APPLIED, at(1, 0), "ab 1234");
        seal(CustodyKind.TAMPER_SEAL_CHECKED, at(2, 0), "AB-1234");
        assertEquals(List.of(), CustodyRules.sealMismatches(chain));
        seal(CustodyKind.TAMPER_SEAL_CHECKED, at(3, 0), "AB-1235");
        seal(CustodyKind.TAMPER_SEAL_CHECKED, at(4, 0), null);
        List<Concerns.SealMismatch> mismatches = CustodyRules.sealMismatches(chain);
        assertEquals(2, mismatches.size());
        assertEquals("ab 1234", mismatches.get(0).expected());
        assertEquals("AB-1235", mismatches.get(0).found());
    }

    @Test
    void aSealFoundWhereNoneWasPutOnIsAMismatch() {
        seal(CustodyKind.TAMPER_SEAL_CHECKED, at(2, 0), "AB-1234");
        assertEquals(1, CustodyRules.sealMismatches(chain).size());
    }

    @Test
    void aHoldHoldsUntilItIsLifted() {
        assertFalse(CustodyRules.isOnHold(chain));
        step(CustodyKind.HOLD_PLACED, at(1, 0));
        assertTrue(CustodyRules.isOnHold(chain));
        step(CustodyKind.HOLD_LIFTED, at(2, 0));
        assertFalse(CustodyRules.isOnHold(chain));
    }

    private static Instant at(int hours, int minutes) {
        return EIGHT.plus(Duration.ofHours(hours)).plus(Duration.ofMinutes(minutes));
    }

    private static void assertRule(String rule, Executable act) {
        assertEquals(rule, assertThrows(InvalidInput.class, act).code());
    }

    private void moved(CustodyKind kind, Instant at, Holder from, Holder to) {
        add(kind, at, to, from, null, null, null, null);
    }

    private void relinquished(Instant given, Instant at, Holder from, Holder to) {
        add(CustodyKind.HANDOVER_ACCEPTED, at, to, from, given, null, null, null);
    }

    private void step(CustodyKind kind, Instant at) {
        add(kind, at, null, null, null, null, null, null);
    }

    private Step temperature(Instant at, String celsius) {
        return add(CustodyKind.TEMPERATURE_READ, at, null, null, null, celsius, null, null);
    }

    private void correction(Step of, String celsius) {
        add(CustodyKind.CORRECTED, of.occurredAt(), null, null, null, celsius, null, of.id());
    }

    private void seal(CustodyKind kind, Instant at, String seal) {
        add(kind, at, null, null, null, null, seal, null);
    }

    private Step add(
            CustodyKind kind,
            Instant at,
            Holder to,
            Holder from,
            Instant relinquishedAt,
            String celsius,
            String seal,
            UUID corrects) {
        Step step = new Step(
                chain.size() + 1,
                UUID.randomUUID(),
                kind,
                at,
                at,
                "ANN",
                to,
                from,
                relinquishedAt,
                false,
                celsius == null ? null : new BigDecimal(celsius),
                seal,
                corrects);
        chain.add(step);
        return step;
    }
}
