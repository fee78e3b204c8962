package org.dentary.jaw.key;

import static org.dentary.jaw.key.AgeClass.ADULT;
import static org.dentary.jaw.key.AgeClass.FAWN;
import static org.dentary.jaw.key.AgeClass.UNKNOWN;
import static org.dentary.jaw.key.AgeClass.YEARLING;
import static org.dentary.jaw.key.JawObservation.DentineVsEnamel.NARROWER;
import static org.dentary.jaw.key.JawObservation.DentineVsEnamel.WIDER;
import static org.dentary.jaw.key.JawObservation.Presence.ERUPTING;
import static org.dentary.jaw.key.JawRule.confirm;
import static org.dentary.jaw.key.JawRule.flag;
import static org.dentary.jaw.key.JawRule.refuse;

import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.dentary.jaw.key.JawObservation.Generation;
import org.dentary.jaw.key.JawObservation.RearCusp;
import org.dentary.jaw.key.JawObservation.Stain;

/**
 * What a jaw reading can hold against itself, one row a contradiction, in the order of their ids; those that look beyond the
 * teeth stand in {@link RecordRules}.
 *
 * <p>Common practice built on published eruption and wear descriptions; timing alone never refuses, as published schedules
 * differ by two to four months. J27 and half of J28 concern a reading that belongs to nothing: see {@link JawKey#problems}.
 */
public final class JawRules {

    private static final List<Integer> NONE = List.of();
    private static final List<Integer> THIRD = List.of(3);
    private static final List<Integer> SIXTH = List.of(6);
    private static final Set<RearCusp> WORN_REAR_CUSP = Set.of(RearCusp.CONCAVE, RearCusp.SLOPED);

    /** Rules that look at the teeth. */
    private static final List<JawRule> OF_TEETH = List.of(
            refuse(
                    "J01",
                    THIRD,
                    f -> f.called(ADULT) && f.thirdIsMilk(),
                    "Called an adult, but the third tooth (position 3) is a three-cusped milk tooth, which is shed by about"
                            + " 20 months. Count the cusps of the third tooth again."),
            refuse(
                    "J02",
                    THIRD,
                    f -> f.fawnByCallOrCount()
                            && (f.thirdIsPermanent() || f.jaw().milkCapLoose()),
                    "A fawn by call or by the count of teeth, but the third tooth (position 3) is the permanent one, which"
                            + " comes at 17 to 20 months. Count its cusps again, and look behind the fifth tooth."),
            refuse(
                    "J03",
                    SIXTH,
                    f -> f.fawnByCallOrCount() && f.full(6),
                    "A fawn by call or by the count of teeth, but the sixth tooth (position 6, M3) is fully up; it only"
                            + " begins to show at 9 to 13 months. Count the cheek teeth again."),
            confirm(
                    "J03",
                    SIXTH,
                    f -> f.fawnByCallOrCount()
                            && f.presence(6) == ERUPTING
                            && !(f.diedOn() != null && !f.diedBefore(f.plan().sixthMayShowFrom())),
                    "A fawn by call or by the count of teeth with the sixth tooth (position 6, M3) coming through, which is"
                            + " early before February. Look at the third tooth's cusps and the sixth tooth again."),
            flag(
                    "J03",
                    SIXTH,
                    f -> f.fawnByCallOrCount()
                            && f.presence(6) == ERUPTING
                            && f.diedOn() != null
                            && !f.diedBefore(f.plan().sixthMayShowFrom()),
                    "A late-winter fawn with the sixth tooth (position 6, M3) coming through: possible, and easily a"
                            + " yearling. Look at the sixth tooth again."),
            refuse(
                    "J04",
                    List.of(5, 6),
                    f -> f.called(ADULT) && (f.absent(5) || f.absent(6)),
                    "Called an adult, but the fifth or sixth tooth (positions 5 and 6) has not come through; an adult has"
                            + " six. Look behind the last tooth seen, and count sockets."),
            refuse(
                    "J04",
                    List.of(5),
                    f -> f.called(YEARLING) && f.absent(5),
                    "Called a yearling, but the fifth tooth (position 5, M2) has not come through; it is up by about 13"
                            + " months. Look behind the last tooth seen, and count sockets."),
            confirm(
                    "J04",
                    SIXTH,
                    f -> f.called(YEARLING) && f.absent(6) && !f.absent(5),
                    "Called a yearling without a sixth tooth (position 6, M3): only a late-born yearling early in the"
                            + " season looks so. Look behind the fifth tooth again."),
            refuse(
                            "J05",
                            THIRD,
                            f -> (f.thirdHasThreeCusps() && f.generation(3) == Generation.PERMANENT)
                                    || (f.thirdCusps() != null
                                            && f.thirdCusps() == 2
                                            && f.generation(3) == Generation.DECIDUOUS),
                            "The third tooth (position 3) is given three cusps and called permanent, or two and called a"
                                    + " milk tooth. Three cusps is the milk tooth, two the permanent one: say again which.")
                    .always(),
            refuse(
                    "J06",
                    List.of(3, 6),
                    f -> f.thirdIsPermanent() && f.full(3) && f.absent(6),
                    "The new third tooth (position 3, P4) is fully up and the sixth (position 6, M3) has not come through;"
                            + " the sixth comes first. Look at both again."),
            refuse(
                    "J07",
                    List.of(4, 5, 6),
                    f -> (f.full(5) && f.absent(4)) || (f.throughGum(6) && f.absent(5)),
                    "A molar is through while the one in front of it (position 4 or 5) is not; they come from front to"
                            + " back. Count the positions again, broken and lost teeth included."),
            refuse(
                            "J08",
                            List.of(3, 4, 5, 6),
                            f -> Stream.of(4, 5, 6).anyMatch(p -> f.generation(p) == Generation.DECIDUOUS)
                                    || Stream.of(3, 4, 5, 6).anyMatch(f::dentineOnAbsentTooth),
                            "A molar is called a milk tooth, or dentine is read on a tooth that is not through or is"
                                    + " broken. Molars have no milk tooth, and such a crest cannot be read: say again what"
                                    + " was seen where.")
                    .always(),
            refuse(
                            "J09",
                            NONE,
                            f -> f.jaw().examinersClass() != null
                                    && f.jaw().examinersClass() != UNKNOWN
                                    && f.jaw().examinersYearClass() != null
                                    && f.jaw().examinersYearClass().ageClass()
                                            != f.jaw().examinersClass(),
                            "The age class and the year class given do not belong together: 0.5 is a fawn, 1.5 a yearling,"
                                    + " 2.5 and more an adult. Say which was meant.")
                    .always(),
            confirm(
                            "J10",
                            List.of(4, 5, 6),
                            f -> f.yearClassAtLeast(YearClass.TWO_AND_HALF)
                                    && f.jaw().examinersCertainty() == Certainty.CLEAR
                                    && f.anyMolarUnread(),
                            "A year class of 2.5 or more is called clear with a molar (positions 4 to 6) unread. It can be"
                                    + " probable at most: read all three molars.")
                    .lowering(),
            confirm(
                    "J11",
                    List.of(3, 4, 6),
                    f -> f.thirdIsMilk()
                            && (f.wearAtLeast(4, WIDER)
                                    || WORN_REAR_CUSP.contains(f.jaw()
                                            .tooth(6)
                                            .map(t -> t.rearCusp())
                                            .orElse(RearCusp.CONE))
                                    || f.jaw().sixthDentine() == JawObservation.Dentine.DEFINED),
                    "A milk third tooth (position 3) beside worn molars; a yearling's molars are barely worn. Was a jaw"
                            + " swapped? Look at the label and at positions 3, 4 and 6."),
            confirm(
                    "J12",
                    List.of(4, 5, 6),
                    f -> f.wornFurtherThan(5, 4) || f.wornFurtherThan(6, 5),
                    "A molar is worn further than the one in front of it, though it came later. Compare positions 4, 5 and"
                            + " 6 again, on the tongue side."),
            confirm(
                    "J13",
                    List.of(4, 5, 6),
                    f -> (f.yearClassIs(YearClass.TWO_AND_HALF) && f.wearAtLeast(4, WIDER))
                            || (f.yearClassIs(YearClass.THREE_AND_HALF) && f.wearAtMost(4, NARROWER))
                            || (f.yearClassIs(YearClass.FOUR_AND_HALF) && f.wearAtMost(5, NARROWER))
                            || (f.yearClassIs(YearClass.FIVE_AND_HALF) && f.wearAtMost(6, NARROWER)),
                    "The year class and the dentine of the molar that decides it do not match: position 4 (M1) for 2.5 and"
                            + " 3.5, position 5 (M2) for 4.5, position 6 (M3) for 5.5. Compare dentine and enamel again."),
            confirm(
                    "J14",
                    THIRD,
                    f -> f.called(ADULT) && f.thirdIsPermanent() && f.thirdStain() == Stain.WHITE && f.thirdUnworn(),
                    "Called an adult, but the third tooth (position 3, P4) is white and unworn: likely a yearling of 19 or"
                            + " 20 months, the commonest slip. Look at its color and crest again."),
            confirm(
                    "J15",
                    THIRD,
                    f -> f.called(YEARLING)
                            && f.thirdIsPermanent()
                            && f.thirdStain() == Stain.LIKE_MOLARS
                            && f.thirdWorn(),
                    "Called a yearling, but the third tooth (position 3, P4) is stained like the molars and worn: likely"
                            + " two and a half years. Look at its crest and the sixth tooth again."),
            flag(
                    "J16",
                    THIRD,
                    f -> f.called(YEARLING)
                            && f.thirdIsMilk()
                            && f.diedAfter(f.plan().milkThirdLateAfter()),
                    "A yearling with the milk third tooth (position 3) this late in the season: born late, or the date or"
                            + " label is wrong. Check both."),
            confirm(
                    "J17",
                    THIRD,
                    f -> f.called(YEARLING)
                            && f.thirdIsPermanent()
                            && f.full(3)
                            && f.diedBefore(f.plan().newThirdFullFrom()),
                    "A yearling with the new third tooth (position 3, P4) fully up this early in the season. Check the date"
                            + " and whether the tooth is worn."),
            flag(
                    "J18",
                    List.of(5),
                    f -> f.called(FAWN) && f.full(5) && f.diedBefore(f.plan().fifthFullFrom()),
                    "A fawn with the fifth tooth (position 5, M2) fully up this early in the season. Check the date and"
                            + " look behind it for a sixth."),
            flag(
                    "J18",
                    List.of(4),
                    f -> f.called(FAWN)
                            && f.count() != null
                            && f.count() <= 3
                            && f.diedAfter(f.plan().threeTeethLateAfter())
                            && !f.plan().isNextBirthPulse(f.diedOn()),
                    "A fawn with only three cheek teeth this late in the season: born very late, or the back of the row was"
                            + " not seen. Look behind the third tooth."));

    /** The key's own consistency. */
    private static final List<JawRule> OF_THE_KEY = List.of(
            refuse(
                    "K01",
                    SIXTH,
                    f -> f.count() != null
                            && !f.congenitallyMissing()
                            && ((f.count() == 6 && f.absent(6)) || (f.count() < 6 && f.throughGum(6))),
                    "The count of cheek teeth and the sixth tooth (position 6, M3) do not agree: six teeth include the"
                            + " sixth, fewer do not. Count from the front again."),
            confirm(
                            "K02",
                            NONE,
                            f -> f.keyClass() != null
                                    && f.examinersClass() != null
                                    && f.examinersClass() != UNKNOWN
                                    && f.examinersClass() != f.keyClass().ageClass(),
                            "The reader's class and the key's differ. Both are kept; look again at the teeth named in the"
                                    + " steps.")
                    .withSecondReader(),
            confirm(
                    "K03",
                    List.of(5, 6),
                    f -> f.called(FAWN) && f.full(5) && f.absent(6),
                    "The fifth tooth (position 5, M2) is fully up and the sixth (position 6, M3) is absent: a fawn late in"
                            + " its first year, or a late-born yearling. Look behind the fifth tooth again."),
            refuse(
                            "K04",
                            List.of(3, 6),
                            f -> f.saidTwice(3)
                                    || f.saidTwice(6)
                                    || (f.thirdCusps() != null && f.absent(3))
                                    || (f.jaw().milkCapLoose()
                                            && f.thirdIsPermanent()
                                            && !f.thirdHasThreeCusps()
                                            && (f.full(3) || f.thirdWorn())),
                            "The reading says two things of one tooth (position 3 or 6) that cannot both be. Look at the"
                                    + " tooth again and say one.")
                    .always(),
            refuse(
                    "K05",
                    THIRD,
                    f -> f.count() != null && f.count() < 3 && f.thirdCusps() != null && !f.congenitallyMissing(),
                    "Fewer than three cheek teeth are counted, and the third (position 3) is described: was the number of"
                            + " cusps taken for the count? Count from the front again, empty and broken sockets included."));

    /** All rows, in the order in which they are reported. */
    public static final List<JawRule> ALL = Stream.of(OF_TEETH, RecordRules.ALL, OF_THE_KEY)
            .flatMap(List::stream)
            .toList();

    private JawRules() {}
}
