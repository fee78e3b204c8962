package org.dentary.jaw.key;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import org.dentary.jaw.AgeingMethod;

/**
 * What is known beside the teeth and can speak against a reading. Any part may be left null: what is not known starts no rule.
 *
 * @param animal the animal the jaw is said to come from
 * @param exam when and how the jaw was read
 * @param others what else is known of the animal's age
 */
public record JawContext(Animal animal, Exam exam, Others others) {

    /** Nothing known but the teeth. */
    public static final JawContext NONE = new JawContext(null, null, null);

    public JawContext {
        animal = animal == null ? new Animal(null, null, null, null, null, null, null) : animal;
        exam = exam == null ? new Exam(null, null, null, null, null, null) : exam;
        others = others == null ? new Others(null, null, null) : others;
    }

    /** Sex of the animal. */
    public enum Sex {
        FEMALE,
        MALE,
        UNKNOWN
    }

    /** What the sex rests on. */
    public enum SexEvidence {
        GENITALIA_OR_UDDER,
        HEAD_ONLY,
        TAG_OR_REPORTED,
        UNKNOWN
    }

    /** Antlers; they never enter the age. */
    public enum Antlers {
        NONE,
        BUTTONS,
        IN_VELVET,
        HARD_SPIKES,
        HARD_BRANCHED
    }

    /** State of the jaw when read. */
    public enum JawState {
        FRESH,
        RIGOR_CUT_CHEEK,
        CLEANED,
        PHOTO_ONLY
    }

    /**
     * @param diedOn day of death, used when the observation names none; null when not known to the day
     * @param fetusMillimetres crown to rump length of the largest fetus
     * @param fieldDressedKilograms mass without the entrails
     */
    public record Animal(
            LocalDate diedOn,
            Sex sex,
            SexEvidence sexEvidence,
            Antlers antlers,
            Boolean lactating,
            Integer fetusMillimetres,
            Double fieldDressedKilograms) {}

    /**
     * @param readAt when the jaw was read
     * @param now the present, by the caller's clock
     * @param zone zone of the station, in which {@code readAt} falls on a day; UTC when null
     * @param method how the reader came to the class; a year class is taken as tooth wear when null
     * @param otherSide class read from the other side of the same jaw
     */
    public record Exam(
            Instant readAt, Instant now, ZoneId zone, JawState jawState, AgeingMethod method, AgeClass otherSide) {
        public Exam {
            zone = zone == null ? ZoneOffset.UTC : zone;
        }
    }

    /**
     * @param ages ages of the same animal by other methods
     * @param designatedMethod method of the age that is to stand for the animal
     * @param jawAlsoOn what else bears this jaw or its photograph: another jaw under this animal, or another animal; null when none
     */
    public record Others(List<OtherAge> ages, AgeingMethod designatedMethod, String jawAlsoOn) {
        public Others {
            ages = ages == null ? List.of() : List.copyOf(ages);
        }
    }

    /** An age by another method; the year class may be null. */
    public record OtherAge(AgeingMethod method, AgeClass ageClass, YearClass yearClass) {}
}
