package org.dentary.portal.day;

/**
 * One thing of the day that does not add up, by name.
 *
 * @param kit the kit it is about
 * @param code the label of the jar; empty where it is about the animal
 * @param what the kind, as {@link Kind} names it
 */
public record DayGap(String kit, String code, String what) {
    /** What can be missing, in the order in which it is put right at the table. */
    public enum Kind {
        NO_TISSUE("no tissue was taken"),
        ONE_NODE("one node of the two; look whether the other is on the table"),
        NO_PHOTO("said to be photographed, and no photo is kept"),
        NO_NUMBER("no registration, tag or other number"),
        LOOSE("with a person, in no box and no store");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public String words() {
        return Kind.valueOf(what).words();
    }
}
