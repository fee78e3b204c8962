package org.dentary.jaw.key;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.dentary.jaw.AgeingMethod;
import org.dentary.jaw.key.JawObservation.Dentine;
import org.dentary.jaw.key.JawObservation.DentineVsEnamel;
import org.dentary.jaw.key.JawObservation.Eruption;
import org.dentary.jaw.key.JawObservation.Generation;
import org.dentary.jaw.key.JawObservation.Presence;
import org.dentary.jaw.key.JawObservation.RowSeen;
import org.dentary.jaw.key.JawObservation.Stain;
import org.dentary.jaw.key.JawObservation.ToothDetail;

/**
 * A reading as the rules look at it. What was answered "unsure" or not given is absent and starts no rule.
 *
 * @param keyClass the class at the end of the key, before any contradiction; null when none
 */
public record JawFacts(JawObservation jaw, JawContext context, AgeingPlan plan, KeyClass keyClass) {

    private static final Set<Presence> DAMAGED =
            Set.of(Presence.BROKEN, Presence.LOST_IN_LIFE, Presence.MISSING_CONGENITAL);

    /** Whether the reader or the key calls the animal so. */
    boolean called(AgeClass ageClass) {
        return examinersClass() == ageClass || (keyClass != null && keyClass.ageClass() == ageClass);
    }

    /** Called a fawn, or counted as one: fewer than six cheek teeth in a row seen whole. */
    boolean fawnByCallOrCount() {
        return called(AgeClass.FAWN) || (count() != null && count() < 6);
    }

    /** The reader's class, by its own name or, where that is not given or unknown, by the year class; null when none was given. */
    AgeClass examinersClass() {
        boolean open = jaw.examinersClass() == null || jaw.examinersClass() == AgeClass.UNKNOWN;
        if (open && jaw.examinersYearClass() != null) {
            return jaw.examinersYearClass().ageClass();
        }
        return jaw.examinersClass();
    }

    /** The class this reading stands for: the key's, else the reader's; {@code UNKNOWN} when neither. */
    AgeClass ageClass() {
        if (keyClass != null) {
            return keyClass.ageClass();
        }
        return examinersClass() == null ? AgeClass.UNKNOWN : examinersClass();
    }

    boolean yearClassIs(YearClass yearClass) {
        return jaw.examinersYearClass() == yearClass;
    }

    boolean yearClassAtLeast(YearClass yearClass) {
        return jaw.examinersYearClass() != null && jaw.examinersYearClass().compareTo(yearClass) >= 0;
    }

    /** Teeth counted in a row seen to its back; null otherwise. */
    Integer count() {
        return jaw.rowSeen() == RowSeen.WHOLE && !jaw.isUnsure(KeyQuestion.ROW_SEEN.field())
                ? jaw.teethCounted()
                : null;
    }

    /** State of a position: as detailed, else as said of the third and sixth tooth, else absent when beyond the count. */
    Presence presence(int position) {
        Presence detailed = detail(position).map(ToothDetail::presence).orElse(null);
        if (detailed != null) {
            return detailed;
        }
        Eruption said = position == 3 ? jaw.thirdEruption() : position == 6 ? jaw.sixthEruption() : null;
        if (said != null) {
            return Presence.valueOf(said.name());
        }
        boolean congenitalGap = IntStream.rangeClosed(1, 6)
                .anyMatch(p -> detail(p).map(ToothDetail::presence).orElse(null) == Presence.MISSING_CONGENITAL);
        return position > 3 && count() != null && position > count() && !congenitalGap ? Presence.NOT_ERUPTED : null;
    }

    boolean absent(int position) {
        return presence(position) == Presence.NOT_ERUPTED;
    }

    boolean full(int position) {
        return presence(position) == Presence.FULL;
    }

    boolean throughGum(int position) {
        return full(position) || presence(position) == Presence.ERUPTING;
    }

    boolean congenitallyMissing() {
        return jaw.teeth().stream().anyMatch(tooth -> tooth.presence() == Presence.MISSING_CONGENITAL);
    }

    Integer thirdCusps() {
        Integer said = jaw.thirdCusps();
        return said != null ? said : detail(3).map(ToothDetail::cusps).orElse(null);
    }

    Stain thirdStain() {
        Stain said = jaw.thirdStain();
        return said != null ? said : detail(3).map(ToothDetail::stain).orElse(null);
    }

    Generation generation(int position) {
        return detail(position).map(ToothDetail::generation).orElse(null);
    }

    boolean thirdHasThreeCusps() {
        return Objects.equals(thirdCusps(), 3);
    }

    boolean thirdIsMilk() {
        return thirdHasThreeCusps() || generation(3) == Generation.DECIDUOUS || jaw.milkCapLoose();
    }

    boolean thirdIsPermanent() {
        return Objects.equals(thirdCusps(), 2) || generation(3) == Generation.PERMANENT;
    }

    boolean thirdUnworn() {
        return jaw.thirdDentine() == Dentine.NOT_EXPOSED;
    }

    boolean thirdWorn() {
        return jaw.thirdDentine() != null && jaw.thirdDentine() != Dentine.NOT_EXPOSED;
    }

    /** Dentine against enamel of a molar; null when not read. */
    DentineVsEnamel wear(int position) {
        DentineVsEnamel wear =
                detail(position).map(ToothDetail::dentineVsEnamel).orElse(null);
        return wear == DentineVsEnamel.NOT_READ ? null : wear;
    }

    boolean wearAtLeast(int position, DentineVsEnamel least) {
        return wear(position) != null && wear(position).compareTo(least) >= 0;
    }

    boolean wearAtMost(int position, DentineVsEnamel most) {
        return wear(position) != null && wear(position).compareTo(most) <= 0;
    }

    /** Whether the tooth behind is worn at least a step further than the one before it. */
    boolean wornFurtherThan(int behind, int before) {
        return wear(behind) != null && wear(before) != null && wear(behind).compareTo(wear(before)) > 0;
    }

    boolean anyMolarUnread() {
        return IntStream.rangeClosed(4, 6).anyMatch(position -> wear(position) == null);
    }

    /** A dentine line claimed on a tooth that is not there to bear one. */
    boolean dentineOnAbsentTooth(int position) {
        boolean none = absent(position) || presence(position) == Presence.BROKEN;
        Dentine said = position == 3 ? jaw.thirdDentine() : position == 6 ? jaw.sixthDentine() : null;
        boolean line = (said != null && said != Dentine.NOT_EXPOSED) || wearAtLeast(position, DentineVsEnamel.NARROWER);
        return none && line;
    }

    /** Whether the detail of a tooth and what was said of it elsewhere in the reading cannot both be. */
    boolean saidTwice(int position) {
        Optional<ToothDetail> detail = detail(position);
        if (detail.isEmpty()) {
            return false;
        }
        Eruption eruption = position == 3 ? jaw.thirdEruption() : jaw.sixthEruption();
        Presence presence = detail.get().presence();
        boolean presenceDiffers = eruption != null
                && presence != null
                && !DAMAGED.contains(presence)
                && presence != Presence.NOT_VISIBLE
                && !presence.name().equals(eruption.name());
        boolean cuspsDiffer = position == 3
                && jaw.thirdCusps() != null
                && detail.get().cusps() != null
                && !jaw.thirdCusps().equals(detail.get().cusps());
        Dentine dentine = position == 3 ? jaw.thirdDentine() : jaw.sixthDentine();
        boolean wearDiffers = dentine != null
                && wear(position) != null
                && (dentine == Dentine.NOT_EXPOSED) != (wear(position) == DentineVsEnamel.NOT_EXPOSED);
        return presenceDiffers || cuspsDiffer || wearDiffers;
    }

    /** Day of death; null when not known to the day. */
    LocalDate diedOn() {
        return jaw.diedOn() != null ? jaw.diedOn() : context.animal().diedOn();
    }

    boolean diedBefore(java.time.MonthDay limit) {
        return diedOn() != null && plan.isBefore(diedOn(), limit);
    }

    boolean diedAfter(java.time.MonthDay limit) {
        return diedOn() != null && plan.isAfter(diedOn(), limit);
    }

    boolean diedInShedPeriod() {
        return diedOn() != null && plan.isShedPeriod(diedOn());
    }

    /** Days from death to the reading; null when either is unknown. */
    Long daysToReading() {
        if (diedOn() == null || context.exam().readAt() == null) {
            return null;
        }
        LocalDate readOn =
                LocalDate.ofInstant(context.exam().readAt(), context.exam().zone());
        return readOn.toEpochDay() - diedOn().toEpochDay();
    }

    boolean massOutsideBands() {
        Double mass = context.animal().fieldDressedKilograms();
        List<AgeingPlan.MassBand> bands =
                plan.massBands(ageClass(), context.animal().sex());
        return mass != null
                && !bands.isEmpty()
                && bands.stream().noneMatch(band -> mass >= band.fromKilograms() && mass <= band.toKilograms());
    }

    /** Whether a cementum age lies more than one year from the teeth, an adult without year class being 2.5 or more. */
    boolean cementumFarOff() {
        return context.others().ages().stream()
                .filter(age -> age.method() == AgeingMethod.CEMENTUM)
                .anyMatch(age -> yearsApart(age) > 1);
    }

    private int yearsApart(JawContext.OtherAge other) {
        if (ageClass() == AgeClass.UNKNOWN || (other.yearClass() == null && other.ageClass() == null)) {
            return 0;
        }
        boolean openHere = jaw.examinersYearClass() == null;
        boolean openThere = other.yearClass() == null;
        int here = openHere ? ageClass().ordinal() : jaw.examinersYearClass().ordinal();
        int there = openThere ? other.ageClass().ordinal() : other.yearClass().ordinal();
        int least = AgeClass.ADULT.ordinal();
        if ((openHere && here == least && there >= least) || (openThere && there == least && here >= least)) {
            return 0;
        }
        return Math.abs(here - there);
    }

    private Optional<ToothDetail> detail(int position) {
        return jaw.tooth(position);
    }
}
