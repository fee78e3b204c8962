package org.dentary.jaw.key;

import java.time.LocalDate;
import java.time.MonthDay;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Set;

/**
 * The dates and limits by which readings are judged, set by the plan for a region and dated by it.
 *
 * <p>{@link #NORTHERN} is the default. Its birth pulse follows Pennsylvania (most fawns 29 May to 10 June, about 2 % after 2
 * August) with a margin on both sides; the other limits are common practice or from memory, as each says, and a plan should
 * replace them by its own agency's.
 *
 * @param region name of the region, for messages
 * @param birthStart first ordinary birthday
 * @param birthPeak commonest birthday
 * @param birthEnd last ordinary birthday
 * @param biologicalYearStart day on which every deer moves up a class
 * @param sixthMayShowFrom J03: from here a sixth tooth coming through in a fawn is reviewed, before it is questioned
 * @param milkThirdLateAfter J16: after this day a yearling's milk third tooth is late
 * @param newThirdFullFrom J17: before this day a yearling's full new third tooth is early
 * @param fifthFullFrom J18: before this day a fawn's full fifth tooth is early
 * @param threeTeethLateAfter J18: after this day a fawn with three cheek teeth is late
 * @param antlersShedFrom J22: start of the shed period (from memory)
 * @param antlersShedTo J22: end of the shed period, this day included (from memory)
 * @param freshDays J28: days after death beyond which a jaw is hardly fresh (from memory)
 * @param fawnFetusMillimetres J20: longest fetus a fawn is expected to carry (from memory)
 * @param massBands J23: field-dressed mass to be expected (from memory, wide)
 * @param probableNeedsSecondReader whether a PROBABLE reading goes to a second reader
 * @param reviewedSpecies species for which a key has been reviewed
 */
public record AgeingPlan(
        String region,
        MonthDay birthStart,
        MonthDay birthPeak,
        MonthDay birthEnd,
        MonthDay biologicalYearStart,
        MonthDay sixthMayShowFrom,
        MonthDay milkThirdLateAfter,
        MonthDay newThirdFullFrom,
        MonthDay fifthFullFrom,
        MonthDay threeTeethLateAfter,
        MonthDay antlersShedFrom,
        MonthDay antlersShedTo,
        int freshDays,
        int fawnFetusMillimetres,
        List<MassBand> massBands,
        boolean probableNeedsSecondReader,
        Set<String> reviewedSpecies) {

    /** A herd with one birth pulse about the first of June. */
    public static final AgeingPlan NORTHERN = new AgeingPlan(
            "northern",
            MonthDay.of(5, 10),
            MonthDay.of(6, 1),
            MonthDay.of(8, 15),
            MonthDay.of(6, 1),
            MonthDay.of(2, 1),
            MonthDay.of(1, 31),
            MonthDay.of(10, 1),
            MonthDay.of(10, 15),
            MonthDay.of(1, 1),
            MonthDay.of(12, 15),
            MonthDay.of(4, 30),
            10,
            100,
            List.of(
                    new MassBand(AgeClass.FAWN, null, 10, 45),
                    new MassBand(AgeClass.YEARLING, JawContext.Sex.FEMALE, 25, 65),
                    new MassBand(AgeClass.YEARLING, JawContext.Sex.MALE, 25, 80),
                    new MassBand(AgeClass.ADULT, JawContext.Sex.FEMALE, 30, 85),
                    new MassBand(AgeClass.ADULT, JawContext.Sex.MALE, 35, 140)),
            true,
            Set.of(JawObservation.DEFAULT_SPECIES));

    private static final double DAYS_A_MONTH = 365.2425 / 12;

    /**
     * The field-dressed mass to be expected of a class.
     *
     * @param sex null for both
     * @param fromKilograms least, included
     * @param toKilograms most, included
     */
    public record MassBand(AgeClass ageClass, JawContext.Sex sex, double fromKilograms, double toKilograms) {
        public MassBand {
            if (!(fromKilograms > 0 && fromKilograms < toKilograms)) {
                throw new IllegalArgumentException("a mass band runs from a positive mass to a greater one, not "
                        + fromKilograms + " to " + toKilograms);
            }
        }
    }

    public AgeingPlan {
        massBands = List.copyOf(massBands);
        reviewedSpecies = Set.copyOf(reviewedSpecies);
        if (birthStart.isAfter(birthPeak) || birthPeak.isAfter(birthEnd)) {
            throw new IllegalArgumentException("the birth pulse starts, peaks and ends within one calendar year, not "
                    + birthStart + ", " + birthPeak + ", " + birthEnd);
        }
        if (biologicalYearStart.isBefore(birthStart) || biologicalYearStart.isAfter(birthEnd)) {
            throw new IllegalArgumentException(
                    "the biological year starts within the birth pulse, not on " + biologicalYearStart);
        }
        if (freshDays < 0 || fawnFetusMillimetres <= 0) {
            throw new IllegalArgumentException("freshDays is 0 or more and fawnFetusMillimetres more than 0");
        }
    }

    /** Calendar year in which the biological year of a day began; its fawns were born in that year. */
    public int biologicalYear(LocalDate day) {
        return day.isBefore(biologicalYearStart.atYear(day.getYear())) ? day.getYear() - 1 : day.getYear();
    }

    /** The one day in the biological year of {@code day} on which {@code limit} falls. */
    public LocalDate inYearOf(LocalDate day, MonthDay limit) {
        int year = biologicalYear(day);
        LocalDate first = limit.atYear(year);
        return first.isBefore(biologicalYearStart.atYear(year)) ? limit.atYear(year + 1) : first;
    }

    boolean isBefore(LocalDate day, MonthDay limit) {
        return day.isBefore(inYearOf(day, limit));
    }

    boolean isAfter(LocalDate day, MonthDay limit) {
        return day.isAfter(inYearOf(day, limit));
    }

    /** Whether deer of the coming biological year may already have been born by this day. */
    boolean isNextBirthPulse(LocalDate day) {
        return !day.isBefore(birthStart.atYear(biologicalYear(day) + 1));
    }

    boolean isShedPeriod(LocalDate day) {
        return !isBefore(day, antlersShedFrom) && !isAfter(day, antlersShedTo);
    }

    /**
     * Age in months, to one decimal, that a deer of a class can have on its day of death: from the last ordinary birthday to the
     * first. The upper end is null for an adult, of which only the least is known.
     *
     * @return null for an unknown class
     */
    public JawAnswer.Months ageInMonths(AgeClass ageClass, LocalDate diedOn) {
        if (ageClass == AgeClass.UNKNOWN) {
            return null;
        }
        int birthYear = biologicalYear(diedOn) - ageClass.ordinal();
        int youngest = isNextBirthPulse(diedOn) ? birthYear + 1 : birthYear;
        LocalDate lastBirth = birthEnd.atYear(youngest);
        LocalDate yearsBefore = diedOn.minusYears(ageClass.ordinal());
        double from = months(lastBirth.isAfter(yearsBefore) ? yearsBefore : lastBirth, diedOn);
        return new JawAnswer.Months(
                from, ageClass == AgeClass.ADULT ? null : months(birthStart.atYear(birthYear), diedOn));
    }

    /** Months between two days to one decimal, a month being a twelfth of a year. */
    static double months(LocalDate born, LocalDate died) {
        return Math.round(ChronoUnit.DAYS.between(born, died) / DAYS_A_MONTH * 10) / 10.0;
    }

    /** The bands that apply to a class and sex; with the sex unknown, those of either. */
    List<MassBand> massBands(AgeClass ageClass, JawContext.Sex sex) {
        return massBands.stream()
                .filter(band -> band.ageClass() == ageClass)
                .filter(band -> band.sex() == null || sex == null || sex == JawContext.Sex.UNKNOWN || band.sex() == sex)
                .toList();
    }
}
