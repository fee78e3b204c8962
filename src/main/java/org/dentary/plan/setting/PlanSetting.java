package org.dentary.plan.setting;

/**
 * Everything the plan can set, with what holds until it does. Values differ by season, region and unit where the plan
 * says so; the most specific wins.
 */
public enum PlanSetting {
    LOW_KIT_STOCK(
            "A station with fewer kits left than this is said to run low", "kits", "20", Allowed.wholeNumber(0, 5000)),
    BIRTH_PULSE_START("First day on which fawns are born in numbers", "month-day", "05-10", Allowed.MONTH_AND_DAY),
    BIRTH_PULSE_PEAK("Day around which most fawns are born", "month-day", "06-01", Allowed.MONTH_AND_DAY),
    BIRTH_PULSE_END("Last day on which fawns are born in numbers", "month-day", "08-15", Allowed.MONTH_AND_DAY),
    BIOLOGICAL_YEAR_START("Day on which every deer becomes a year older", "month-day", "06-01", Allowed.MONTH_AND_DAY),
    ERUPTING_SIXTH_TOOTH_FLAG_FROM(
            "J03: from this day on an erupting sixth tooth in a fawn is flagged, before it a second look is asked for",
            "month-day",
            "02-01",
            Allowed.MONTH_AND_DAY),
    MILK_TOOTH_UNUSUAL_AFTER(
            "J16: a milk third tooth after this day is flagged", "month-day", "01-31", Allowed.MONTH_AND_DAY),
    FULL_THIRD_TOOTH_UNUSUAL_BEFORE(
            "J17: a fully grown permanent third tooth in a yearling before this day asks for a second look",
            "month-day",
            "10-01",
            Allowed.MONTH_AND_DAY),
    FULL_FIFTH_TOOTH_UNUSUAL_BEFORE(
            "J18: a fully grown fifth tooth in a fawn before this day is flagged",
            "month-day",
            "10-15",
            Allowed.MONTH_AND_DAY),
    THREE_TEETH_UNUSUAL_AFTER(
            "J18: a fawn with only three cheek teeth after this day is flagged",
            "month-day",
            "01-01",
            Allowed.MONTH_AND_DAY),
    FRESH_JAW_DAYS(
            "J28: a jaw said to be fresh more than this many days after death is flagged",
            "days",
            "10",
            Allowed.wholeNumber(1, 60)),
    ANTLERS_SHED_FROM(
            "J22: first day of the weeks in which antlers are shed", "month-day", "12-15", Allowed.MONTH_AND_DAY),
    ANTLERS_SHED_TO(
            "J22: last day of the weeks in which antlers are shed", "month-day", "04-30", Allowed.MONTH_AND_DAY),
    FAWN_FETUS_MILLIMETRES(
            "J20: longest fetus, crown to rump, that a fawn is expected to carry",
            "millimetres",
            "100",
            Allowed.wholeNumber(1, 500)),
    FIELD_DRESSED_KILOGRAMS_FAWN(
            "J23: field-dressed mass to be expected of a fawn; outside it the mass is flagged",
            "kilograms",
            "10-45",
            Allowed.span(1, 300)),
    FIELD_DRESSED_KILOGRAMS_YEARLING_FEMALE(
            "J23: field-dressed mass to be expected of a female yearling; outside it the mass is flagged",
            "kilograms",
            "25-65",
            Allowed.span(1, 300)),
    FIELD_DRESSED_KILOGRAMS_YEARLING_MALE(
            "J23: field-dressed mass to be expected of a male yearling; outside it the mass is flagged",
            "kilograms",
            "25-80",
            Allowed.span(1, 300)),
    FIELD_DRESSED_KILOGRAMS_ADULT_FEMALE(
            "J23: field-dressed mass to be expected of a female adult; outside it the mass is flagged",
            "kilograms",
            "30-85",
            Allowed.span(1, 300)),
    FIELD_DRESSED_KILOGRAMS_ADULT_MALE(
            "J23: field-dressed mass to be expected of a male adult; outside it the mass is flagged",
            "kilograms",
            "35-140",
            Allowed.span(1, 300)),
    PROBABLE_NEEDS_SECOND_READER(
            "Whether a PROBABLE reading waits for a second reader", "yes or no", "true", Allowed.YES_OR_NO),
    BLIND_SECOND_READING_SHARE(
            "Share of jaws drawn for a second reading by someone who has not seen the first",
            "share",
            "0.05",
            Allowed.share()),
    PRACTICE_SCORE_NEEDED(
            "Share of a practice round's jaws that a person classes rightly, under the rules in force, before that person's"
                    + " readings count without a second reader; 0 asks for no practice",
            "share",
            "0",
            Allowed.share()),
    PRACTICE_ROUND_JAWS("Jaws in a round of practice", "jaws", "10", Allowed.wholeNumber(5, 20)),
    UNKNOWN_AGE_NOTE_SHARE(
            "Share of animals without a known age class above which a report says so",
            "share",
            "0.05",
            Allowed.share()),
    PENDING_SHARE_INCOMPLETE(
            "Share of results pending above which a report is headed incomplete", "share", "0.10", Allowed.share()),
    DESIGN_PREVALENCE("Prevalence that the sampling should be able to find", "share", "0.01", Allowed.shareAboveNone()),
    DETECTION_TARGET(
            "Probability with which the sampling should find the disease at the design prevalence",
            "share",
            "0.95",
            Allowed.shareBetween()),
    TEST_PERFORMANCE_SET(
            "Set of test-performance that the sensitivity is taken from; nothing takes TEST_SENSITIVITY",
            "code",
            "",
            Allowed.CODES),
    TEST_SENSITIVITY(
            "Share of a herd's infected animals in which the disease is found by tissue and test as used here",
            "share",
            "1",
            Allowed.shareAboveNone()),
    TEST_SENSITIVITY_SOURCE("Publication or validation that the sensitivity is from", "text", "", Allowed.TEXT),
    TEST_SENSITIVITY_MEANS(
            "Whether the sensitivity is of infected animals or relative to another test; a relative one is refused",
            "word",
            "ANIMAL_LEVEL",
            Allowed.word("ANIMAL_LEVEL", "RELATIVE")),
    HERD_SIZE(
            "Animals of the species in a management unit; nothing if not known, and then the herd counts as large",
            "animals",
            "",
            Allowed.wholeNumberOrNothing(1, 999999)),
    HERD_SIZE_SOURCE("Survey or model that the herd size is from, with its year", "text", "", Allowed.TEXT),
    FREEDOM_PRIOR(
            "Probability, before the first season of sampling, that prevalence is below the design prevalence; 0.5 says"
                    + " that nothing is known",
            "share",
            "0.5",
            Allowed.share()),
    INTRODUCTION_RISK(
            "Probability that from one season to the next the disease arrives and reaches the design prevalence",
            "share",
            "0.05",
            Allowed.share()),
    RISK_WEIGHT_SET(
            "Set of risk weights by which animals count towards detection; nothing counts all alike",
            "code",
            "",
            Allowed.CODES),
    SPARSE_SAMPLE(
            "A unit with fewer animals tested than this is said to be sparsely sampled",
            "animals",
            "30",
            Allowed.wholeNumber(1, 999999)),
    ONE_SIDED_SHARE(
            "Share of a unit's tested animals in one sex, age class or station above which the sample is said to be"
                    + " one-sided",
            "share",
            "0.80",
            Allowed.shareAboveNone()),
    CUSTODY_LATE_HOURS(
            "Hours between what happened and its entry beyond which a custody entry is late and needs a reason",
            "hours",
            "12",
            Allowed.wholeNumber(1, 720)),
    CLOCK_SKEW_MINUTES(
            "Minutes that a device's clock may run ahead of the service's",
            "minutes",
            "10",
            Allowed.wholeNumber(0, 120)),
    HAND_OVER_UNACCEPTED_HOURS(
            "Hours after which a hand-over that nobody accepted is shown as overdue",
            "hours",
            "24",
            Allowed.wholeNumber(1, 720)),
    CUSTODY_GAP_HOURS(
            "Hours without a known custodian beyond which a gap is shown", "hours", "72", Allowed.wholeNumber(1, 720)),
    DISCREPANCY_DAYS(
            "Days within which whoever owns a discrepancy settles it", "days", "7", Allowed.wholeNumber(1, 90)),
    CHILLED_LOWEST_CELSIUS(
            "Lowest temperature at which fresh chilled tissue keeps",
            "degrees Celsius",
            "0",
            Allowed.wholeNumber(-10, 10)),
    CHILLED_HIGHEST_CELSIUS(
            "Highest temperature at which fresh chilled tissue keeps",
            "degrees Celsius",
            "8",
            Allowed.wholeNumber(0, 25)),
    FROZEN_HIGHEST_CELSIUS(
            "Highest temperature at which frozen tissue keeps", "degrees Celsius", "-15", Allowed.wholeNumber(-90, 0)),
    FORMALIN_LOWEST_CELSIUS(
            "Lowest temperature at which tissue in formalin keeps; frost spoils it",
            "degrees Celsius",
            "1",
            Allowed.wholeNumber(-10, 20)),
    SCREENING_ALONE_DETECTS(
            "Whether a final screening detection counts as detected without confirmation",
            "yes or no",
            "false",
            Allowed.YES_OR_NO),
    POOL_PASSES_TO_MEMBERS(
            "Whether a pool in which nothing was detected passes that to each animal in it",
            "yes or no",
            "false",
            Allowed.YES_OR_NO),
    ADJUNCT_METHODS_THAT_COUNT(
            "Test methods whose adjunct findings move an outcome", "test method codes", "", Allowed.CODES),
    RELEASE_DEPUTIES(
            "Accounts that may release a detection when the coordinator cannot", "account names", "", Allowed.CODES),
    CONTACT_DAYS(
            "Days for which a sampler sees the contacts taken down at intake", "days", "2", Allowed.wholeNumber(0, 60)),
    RAW_UPLOAD_DAYS(
            "Days after posting for which a laboratory's file is kept", "days", "30", Allowed.wholeNumber(0, 365)),
    PROTOCOL_VERSION("Edition of the protocol that people acknowledge", "text", "1", Allowed.TEXT),
    PROTOCOL_TEXT("What the protocol asks of everyone who handles animals or tissue", "text", "", Allowed.TEXT),
    PROTOCOL_REVIEWED_BY("Person who reviewed the protocol", "person code", "", Allowed.CODES),
    PROTOCOL_REVIEWED_ON("Day on which the protocol was reviewed", "date", "", Allowed.DAY),
    PROTOCOL_REVIEWED_VERSION("Edition of the protocol that was reviewed", "text", "", Allowed.TEXT),
    EMERGENCY_NUMBER("Number to call when life is in danger", "telephone", "", Allowed.TEXT),
    POISON_CENTER_NUMBER("Number of the poison center", "telephone", "", Allowed.TEXT),
    SUPERVISOR_NUMBER("Number of the supervisor on duty", "telephone", "", Allowed.TEXT),
    DISEASES_ESTABLISHED(
            "Diseases known to be there already: a detection of one opens no incident",
            "disease codes",
            "",
            Allowed.CODES),
    FIRST_DETECTION_TOLD(
            "Who is told of a first detection, in this order, apart by semicolons",
            "text",
            "The director of the wildlife agency; The state veterinarian; The state health department; Field staff and"
                    + " stations of the unit",
            Allowed.TEXT),
    DETECTION_TOLD_HOURS(
            "Hours after release within which whoever brought the animal is told of a detection",
            "hours",
            "24",
            Allowed.wholeNumber(1, 720)),
    OUTCOME_TOLD_DAYS(
            "Days after release within which every other outcome is told", "days", "14", Allowed.wholeNumber(1, 180)),
    RESULTS_NUMBER("Number to call about a result", "telephone", "", Allowed.TEXT),
    LETTER_SENDER("Who writes letters, with the address, as they stand at their head", "text", "", Allowed.TEXT),
    HEALTH_AGENCY("The health agency that advises about meat", "name", "", Allowed.TEXT),
    HEALTH_AGENCY_NUMBER("Number of the health agency", "telephone", "", Allowed.TEXT),
    HEALTH_AGENCY_ADVICE(
            "The health agency's current advice, word for word, as letters print it", "text", "", Allowed.TEXT);

    private final String meaning;
    private final String unit;
    private final String byDefault;
    private final Allowed allowed;

    PlanSetting(String meaning, String unit, String byDefault, Allowed allowed) {
        this.meaning = meaning;
        this.unit = unit;
        this.byDefault = byDefault;
        this.allowed = allowed;
    }

    /** What it decides, as a sentence part. */
    public String meaning() {
        return meaning;
    }

    /** What its values are counted in. */
    public String unit() {
        return unit;
    }

    /** What holds until the plan says otherwise. */
    public String byDefault() {
        return byDefault;
    }

    /** The allowed values in words. */
    public String allowed() {
        return allowed.words();
    }

    /** Whether the value is allowed. */
    public boolean allows(String value) {
        return allowed.test().test(value);
    }
}
