package org.dentary.custody.chain;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.dentary.custody.chain.Concerns.Excursion;
import org.dentary.custody.chain.Concerns.Gap;
import org.dentary.custody.chain.Concerns.LateEntry;
import org.dentary.custody.chain.Concerns.SealMismatch;
import org.dentary.custody.chain.Concerns.Why;
import org.dentary.platform.problem.InvalidInput;

/**
 * The rules of custody. A chain is kept in the order of recording; who held at a moment is read from the same events in
 * the order of happening.
 *
 * <p>Source: a sample is in custody while possessed, in view, locked up or sealed, and both sides put name and time to
 * each transfer (US EPA Region V, 1978); that late entries are shown rather than refused is common practice, no source.
 */
public final class CustodyRules {
    static final Comparator<Step> AS_IT_HAPPENED =
            Comparator.comparing(Step::occurredAt).thenComparing(Step::sequence);

    private CustodyRules() {}

    /**
     * Whether an entry is late: entered more than the allowed time after it happened. Exactly the allowed time is not.
     */
    public static boolean isLate(Instant occurredAt, Instant enteredAt, Duration allowed) {
        return Duration.between(occurredAt, enteredAt).compareTo(allowed) > 0;
    }

    /**
     * Refuses times that cannot be.
     *
     * @param skew how far the device's clock may be ahead
     * @throws InvalidInput if the event lies in the future, was entered in the future, or was entered before it happened
     */
    static void requirePossible(Instant occurredAt, Instant enteredAt, Instant receivedAt, Duration skew) {
        if (occurredAt.isAfter(receivedAt.plus(skew))) {
            throw InvalidInput.field(
                    "occurredAt",
                    "IN_FUTURE",
                    "occurredAt " + occurredAt + " lies in the future; it is " + receivedAt
                            + " here. Check the device's clock");
        }
        if (enteredAt.isAfter(receivedAt.plus(skew))) {
            throw InvalidInput.field(
                    "enteredAt",
                    "IN_FUTURE",
                    "enteredAt " + enteredAt + " lies in the future; it is " + receivedAt
                            + " here. Check the device's clock");
        }
        if (occurredAt.isAfter(enteredAt.plus(skew))) {
            throw InvalidInput.field(
                    "enteredAt",
                    "ENTERED_TOO_EARLY",
                    "enteredAt " + enteredAt + " is before occurredAt " + occurredAt
                            + "; an event is entered when or after it happens");
        }
    }

    /** @throws InvalidInput if a late entry comes without its reason */
    static void requireReasonIfLate(Instant occurredAt, Instant enteredAt, Duration allowed, String reason) {
        if (isLate(occurredAt, enteredAt, allowed) && (reason == null || reason.isBlank())) {
            throw InvalidInput.field(
                    "reason",
                    "LATE_NEEDS_REASON",
                    "entered " + hours(occurredAt, enteredAt) + " h after it happened; later than " + allowed.toHours()
                            + " h needs a reason. Say why it is entered only now");
        }
    }

    /** @throws InvalidInput if the event lies before the collection of what it is about */
    public static void requireAfterCollection(String code, Instant occurredAt, Instant collectedAt) {
        if (occurredAt.isBefore(collectedAt)) {
            throw InvalidInput.field(
                    "occurredAt",
                    "BEFORE_COLLECTION",
                    "occurredAt " + occurredAt + " is before " + code + " was collected (" + collectedAt
                            + "); nothing can happen to a specimen before it is one");
        }
    }

    /**
     * Who held at a moment, by the order of happening; events at that very moment count.
     *
     * @param steps in any order
     * @return empty before custody began
     */
    static Optional<Holder> holderAt(List<Step> steps, Instant at) {
        return steps.stream()
                .filter(step -> step.custodian() != null && !step.occurredAt().isAfter(at))
                .max(AS_IT_HAPPENED)
                .map(Step::custodian);
    }

    /** When the present custodian's custody began: the last move by the order of happening; empty without any. */
    public static Optional<Step> lastMove(List<Step> steps) {
        return steps.stream().filter(step -> step.custodian() != null).max(AS_IT_HAPPENED);
    }

    /**
     * Stretches longer than allowed in which the custodian is not known, in the order of happening. A giver who, by the
     * times given, did not hold is told however short it is.
     *
     * @param now ends, for its length, a gap that lasts
     */
    public static List<Gap> gaps(List<Step> steps, Duration allowed, Instant now) {
        List<Gap> gaps = new ArrayList<>();
        Holder holder = null;
        Step lost = null;
        Step delivered = null;
        for (Step step : steps.stream().sorted(AS_IT_HAPPENED).toList()) {
            if (step.from() != null && holder != null && !step.from().equals(holder)) {
                gaps.add(gap(step.occurredAt(), step.occurredAt(), Why.GIVEN_BY_SOMEBODY_ELSE, step.sequence()));
            }
            if (step.relinquishedAt() != null && longer(step.relinquishedAt(), step.occurredAt(), allowed)) {
                gaps.add(gap(
                        step.relinquishedAt(), step.occurredAt(), Why.BETWEEN_GIVING_AND_RECEIVING, step.sequence()));
            }
            if (step.kind() == CustodyKind.LOST) {
                lost = step;
            } else if (step.kind() == CustodyKind.DELIVERED) {
                delivered = step;
            } else if (step.custodian() != null) {
                if (lost != null && longer(lost.occurredAt(), step.occurredAt(), allowed)) {
                    gaps.add(gap(lost.occurredAt(), step.occurredAt(), Why.LOST, step.sequence()));
                }
                if (delivered != null && longer(delivered.occurredAt(), step.occurredAt(), allowed)) {
                    gaps.add(gap(
                            delivered.occurredAt(),
                            step.occurredAt(),
                            Why.BETWEEN_DELIVERY_AND_COUNT,
                            step.sequence()));
                }
                lost = null;
                delivered = null;
            }
            holder = step.custodian() == null ? holder : step.custodian();
        }
        addOpen(gaps, lost, Why.LOST, allowed, now);
        addOpen(gaps, delivered, Why.BETWEEN_DELIVERY_AND_COUNT, allowed, now);
        return List.copyOf(gaps);
    }

    /** The entries recorded as late, in the order of recording. */
    public static List<LateEntry> lateEntries(List<Step> steps) {
        return steps.stream()
                .filter(Step::late)
                .map(step -> new LateEntry(
                        step.sequence(),
                        step.kind(),
                        step.occurredAt(),
                        step.enteredAt(),
                        hours(step.occurredAt(), step.enteredAt())))
                .toList();
    }

    /**
     * The temperatures that do not suit the preservation of that moment, in the order of happening. A corrected reading
     * counts with the correction's value.
     *
     * @param limitsAt the limits at a moment
     */
    public static List<Excursion> excursions(List<Step> steps, Function<Instant, Limits.Temperatures> limitsAt) {
        List<Excursion> excursions = new ArrayList<>();
        for (Step step : asCorrected(steps)) {
            if (step.temperatureCelsius() != null) {
                Limits.Temperatures limits = limitsAt.apply(step.occurredAt());
                if (!limits.hold(step.temperatureCelsius())) {
                    excursions.add(new Excursion(
                            step.sequence(),
                            step.occurredAt(),
                            step.temperatureCelsius(),
                            limits.lowestCelsius(),
                            limits.highestCelsius()));
                }
            }
        }
        return List.copyOf(excursions);
    }

    /** The seal checks that did not find the seal last put on, in the order of happening. */
    public static List<SealMismatch> sealMismatches(List<Step> steps) {
        List<SealMismatch> mismatches = new ArrayList<>();
        String sealed = null;
        for (Step step : asCorrected(steps)) {
            if (step.kind() == CustodyKind.TAMPER_SEAL_APPLIED) {
                sealed = step.tamperSeal();
            } else if (step.kind() == CustodyKind.TAMPER_SEAL_CHECKED && !sameSeal(sealed, step.tamperSeal())) {
                mismatches.add(new SealMismatch(step.sequence(), step.occurredAt(), sealed, step.tamperSeal()));
            }
        }
        return List.copyOf(mismatches);
    }

    /** Whether a seal found is the one put on; people type numbers with or without spaces and capitals. */
    public static boolean sameSeal(String expected, String found) {
        return expected != null && found != null && plain(expected).equals(plain(found));
    }

    /** The seal that should be on at a moment, by the order of happening; null for none. */
    public static String sealAt(List<Step> steps, Instant at) {
        return asCorrected(steps).stream()
                .filter(step -> step.kind() == CustodyKind.TAMPER_SEAL_APPLIED
                        && !step.occurredAt().isAfter(at))
                .reduce((first, second) -> second)
                .map(Step::tamperSeal)
                .orElse(null);
    }

    /** Whether it was lost at a moment: reported so, and custody has not moved since. */
    public static boolean isLost(List<Step> steps, Instant at) {
        return steps.stream()
                .filter(step -> !step.occurredAt().isAfter(at))
                .filter(step -> step.kind() == CustodyKind.LOST || step.custodian() != null)
                .max(AS_IT_HAPPENED)
                .map(step -> step.kind() == CustodyKind.LOST)
                .orElse(false);
    }

    /** Whether a hold is in force, by the order of happening. */
    public static boolean isOnHold(List<Step> steps) {
        return steps.stream()
                .filter(step -> step.kind() == CustodyKind.HOLD_PLACED || step.kind() == CustodyKind.HOLD_LIFTED)
                .max(AS_IT_HAPPENED)
                .map(step -> step.kind() == CustodyKind.HOLD_PLACED)
                .orElse(false);
    }

    /** Hours between two moments, one decimal. */
    public static BigDecimal hours(Instant from, Instant to) {
        return BigDecimal.valueOf(Duration.between(from, to).toSeconds())
                .divide(BigDecimal.valueOf(3600), 1, RoundingMode.HALF_UP);
    }

    /** The events with the values of their corrections, without the corrections, in the order of happening. */
    private static List<Step> asCorrected(List<Step> steps) {
        Map<UUID, Step> corrections = new HashMap<>();
        steps.stream()
                .filter(step -> step.corrects() != null)
                .sorted(Comparator.comparing(Step::sequence))
                .forEach(step -> corrections.put(step.corrects(), step));
        return steps.stream()
                .filter(step -> step.corrects() == null)
                .map(step -> corrected(step, corrections.get(step.id())))
                .sorted(AS_IT_HAPPENED)
                .toList();
    }

    private static Step corrected(Step step, Step correction) {
        if (correction == null) {
            return step;
        }
        return new Step(
                step.sequence(),
                step.id(),
                step.kind(),
                step.occurredAt(),
                step.enteredAt(),
                step.actor(),
                step.custodian(),
                step.from(),
                step.relinquishedAt(),
                step.late(),
                correction.temperatureCelsius() == null ? step.temperatureCelsius() : correction.temperatureCelsius(),
                correction.tamperSeal() == null ? step.tamperSeal() : correction.tamperSeal(),
                null);
    }

    private static void addOpen(List<Gap> gaps, Step since, Why why, Duration allowed, Instant now) {
        if (since != null && longer(since.occurredAt(), now, allowed)) {
            gaps.add(new Gap(since.occurredAt(), null, hours(since.occurredAt(), now), why, since.sequence()));
        }
    }

    private static Gap gap(Instant from, Instant to, Why why, int sequence) {
        return new Gap(from, to, hours(from, to), why, sequence);
    }

    private static boolean longer(Instant from, Instant to, Duration allowed) {
        return Duration.between(from, to).compareTo(allowed) > 0;
    }

    private static String plain(String seal) {
        return seal.replaceAll("[\\s-]", "").toUpperCase(java.util.Locale.ROOT);
    }
}
