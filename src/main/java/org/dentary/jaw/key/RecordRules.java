package org.dentary.jaw.key;

import static org.dentary.jaw.key.AgeClass.FAWN;
import static org.dentary.jaw.key.AgeClass.UNKNOWN;
import static org.dentary.jaw.key.JawRule.confirm;
import static org.dentary.jaw.key.JawRule.flag;

import java.util.List;
import org.dentary.jaw.AgeingMethod;
import org.dentary.jaw.key.JawContext.Antlers;
import org.dentary.jaw.key.JawContext.JawState;
import org.dentary.jaw.key.JawContext.Sex;
import org.dentary.jaw.key.JawContext.SexEvidence;

/**
 * Contradictions between a jaw reading and what else is known of the animal, its other side and the exam (J19 to J28). None
 * refuses a class: antlers, mass and other methods never enter the age.
 */
final class RecordRules {

    private static final List<Integer> NONE = List.of();

    static final List<JawRule> ALL = List.of(
            confirm(
                            "J19",
                            NONE,
                            f -> f.context().exam().otherSide() != null
                                    && f.context().exam().otherSide() != UNKNOWN
                                    && f.ageClass() != UNKNOWN
                                    && f.ageClass() != f.context().exam().otherSide(),
                            "The left and right sides give different classes. Deer chew unevenly; a second reader looks at"
                                    + " both sides.")
                    .withSecondReader(),
            confirm(
                    "J20",
                    NONE,
                    f -> f.called(FAWN)
                            && (f.context().animal().antlers() == Antlers.HARD_BRANCHED
                                    || Boolean.TRUE.equals(f.context().animal().lactating())
                                    || (f.context().animal().fetusMillimetres() != null
                                            && f.context().animal().fetusMillimetres()
                                                    > f.plan().fawnFetusMillimetres())),
                    "Called a fawn, but the animal has hard branched antlers, is in milk, or carries a fetus larger than a"
                            + " fawn would. Check that jaw and animal belong together, and the teeth again."),
            confirm(
                    "J21",
                    NONE,
                    f -> f.context().animal().sex() == Sex.FEMALE
                            && f.context().animal().antlers() != null
                            && f.context().animal().antlers() != Antlers.NONE,
                    "A female with antlers: rare but real. Check the sex, then leave it so."),
            flag(
                    "J22",
                    NONE,
                    f -> f.context().animal().sexEvidence() == SexEvidence.HEAD_ONLY
                            && (f.called(FAWN) || f.diedInShedPeriod()),
                    "The sex was judged by the head alone, in a fawn or when antlers are shed: a male with buttons or"
                            + " without antlers looks female. Look for other evidence."),
            flag(
                    "J23",
                    NONE,
                    JawFacts::massOutsideBands,
                    "The field-dressed mass lies outside the plan's band for this class and sex. Check the unit (kilograms"
                            + " or pounds) and the scale."),
            flag(
                    "J24",
                    List.of(4, 5, 6),
                    f -> f.yearClassAtLeast(YearClass.FOUR_AND_HALF)
                            && (f.context().exam().method() == null
                                    || f.context().exam().method() == AgeingMethod.TOOTH_WEAR),
                    "Low reliability: above 3.5 years tooth wear is often wrong by a year or more. Report the animal as an"
                            + " adult."),
            flag(
                    "J25",
                    NONE,
                    JawFacts::cementumFarOff,
                    "The cementum age differs from the teeth by more than a year. Both are kept; neither replaces the"
                            + " other without a designation."),
            flag(
                    "J26",
                    NONE,
                    f -> f.context().others().designatedMethod() != null
                            && !f.context().others().designatedMethod().mayBeDesignated(true),
                    "An age from looks or hearsay is named for the animal although its jaw was examined; it cannot be"
                            + " designated. Choose the jaw reading or ask for another."),
            flag(
                    "J28",
                    NONE,
                    f -> f.context().exam().jawState() == JawState.FRESH
                            && f.daysToReading() != null
                            && f.daysToReading() > f.plan().freshDays(),
                    "The jaw is called fresh, but was read long after death. Check the date and the jaw's label."));

    private RecordRules() {}
}
