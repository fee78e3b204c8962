package org.dentary.jaw.key;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What one person saw in one jaw, exactly as given. Teeth are counted from the front, 1 to 6, in one side of the lower jaw.
 *
 * @param species coded species; {@code WHITE_TAILED_DEER} when left out
 * @param diedOn day of death; null when not known to the day
 * @param rowSeen whether the row was seen to its back; {@code WHOLE} when left out
 * @param cheekTeeth cheek teeth through the gum or coming through, empty and broken sockets counted, in [0, 6]
 * @param thirdTooth the tooth at position 3; null when not described
 * @param sixthTooth the tooth at position 6; null when not described
 * @param teeth further detail, at most one entry a position; empty, never null
 * @param unsure names of fields answered "unsure", such as {@code thirdTooth.cusps}; a value given beside it is not used
 * @param abnormal whether the reader calls the jaw abnormal or damaged
 * @param examinersClass the reader's own call, before the key's; null when none
 * @param examinersYearClass the reader's own year class; null when none
 * @param examinersCertainty how sure the reader is of that call; null when not said
 */
public record JawObservation(
        String species,
        LocalDate diedOn,
        RowSeen rowSeen,
        Integer cheekTeeth,
        ThirdTooth thirdTooth,
        SixthTooth sixthTooth,
        List<ToothDetail> teeth,
        List<String> unsure,
        Boolean abnormal,
        AgeClass examinersClass,
        YearClass examinersYearClass,
        Certainty examinersCertainty) {

    /** The species taken when none is given. */
    public static final String DEFAULT_SPECIES = "WHITE_TAILED_DEER";

    /** How much of the row was seen. */
    public enum RowSeen {
        WHOLE,
        FRONT_ONLY
    }

    /** How far a tooth is through the gum. */
    public enum Eruption {
        NOT_ERUPTED,
        ERUPTING,
        FULL
    }

    /** The brown line between the white enamel edges of a crest. */
    public enum Dentine {
        NOT_EXPOSED,
        TRACE,
        DEFINED
    }

    /** Color of the third tooth beside the molars. */
    public enum Stain {
        WHITE,
        LIKE_MOLARS,
        UNSURE
    }

    /** State of one place in the row. */
    public enum Presence {
        NOT_ERUPTED,
        ERUPTING,
        FULL,
        LOST_IN_LIFE,
        BROKEN,
        MISSING_CONGENITAL,
        NOT_VISIBLE
    }

    /** Milk tooth or permanent tooth; asked of positions 1 to 3. */
    public enum Generation {
        DECIDUOUS,
        PERMANENT,
        UNSURE
    }

    /** Width of the dentine against that of the enamel on the tongue-side crest, in order of wear; asked of positions 4 to 6. */
    public enum DentineVsEnamel {
        NOT_EXPOSED,
        NARROWER,
        EQUAL,
        WIDER,
        TWICE_PLUS,
        CREST_GONE,
        NOT_READ
    }

    /** The rear cusp of the sixth tooth, in order of wear. */
    public enum RearCusp {
        NOT_UP,
        CONE,
        FLAT,
        CONCAVE,
        SLOPED
    }

    /**
     * The tooth at position 3.
     *
     * @param cusps 2 or 3
     * @param milkCapLoose whether a loose milk cap sits on a rising premolar
     */
    public record ThirdTooth(Integer cusps, Eruption eruption, Dentine dentine, Boolean milkCapLoose, Stain stain) {}

    /** The tooth at position 6. */
    public record SixthTooth(Eruption eruption, Dentine dentine) {}

    /**
     * Everything that can be said of one position; any part may be null.
     *
     * @param position 1 to 6 from the front
     * @param cusps 2 or 3, position 3 only
     * @param rearCusp position 6 only
     */
    public record ToothDetail(
            Integer position,
            Presence presence,
            Generation generation,
            Integer cusps,
            Stain stain,
            DentineVsEnamel dentineVsEnamel,
            RearCusp rearCusp) {}

    public JawObservation {
        species = species == null || species.isBlank() ? DEFAULT_SPECIES : species;
        rowSeen = rowSeen == null ? RowSeen.WHOLE : rowSeen;
        teeth = teeth == null ? List.of() : List.copyOf(teeth);
        unsure = unsure == null ? List.of() : List.copyOf(unsure);
        abnormal = Boolean.TRUE.equals(abnormal);
    }

    /** Whether the field was answered "unsure", by its own name or by its tooth's. */
    public boolean isUnsure(String field) {
        int dot = field.indexOf('.');
        return unsure.contains(field) || (dot > 0 && unsure.contains(field.substring(0, dot)));
    }

    /** The detail given for a position. */
    public Optional<ToothDetail> tooth(int position) {
        return teeth.stream()
                .filter(tooth -> tooth.position() != null && tooth.position() == position)
                .findFirst();
    }

    /** Cusps of the third tooth as the key may use them: null when not given or unsure. */
    Integer thirdCusps() {
        return thirdTooth == null || isUnsure("thirdTooth.cusps") ? null : thirdTooth.cusps();
    }

    Eruption thirdEruption() {
        return thirdTooth == null || isUnsure("thirdTooth.eruption") ? null : thirdTooth.eruption();
    }

    Dentine thirdDentine() {
        return thirdTooth == null || isUnsure("thirdTooth.dentine") ? null : thirdTooth.dentine();
    }

    boolean milkCapLoose() {
        return thirdTooth != null
                && !isUnsure("thirdTooth.milkCapLoose")
                && Boolean.TRUE.equals(thirdTooth.milkCapLoose());
    }

    Stain thirdStain() {
        return thirdTooth == null || isUnsure("thirdTooth.stain") ? null : thirdTooth.stain();
    }

    Eruption sixthEruption() {
        return sixthTooth == null || isUnsure("sixthTooth.eruption") ? null : sixthTooth.eruption();
    }

    Dentine sixthDentine() {
        return sixthTooth == null || isUnsure("sixthTooth.dentine") ? null : sixthTooth.dentine();
    }

    Integer teethCounted() {
        return isUnsure("cheekTeeth") ? null : cheekTeeth;
    }
}
