package org.dentary.animal;

/** What happened to the jaw at intake. */
public enum JawStatus {
    READ("Read here"),
    COLLECTED_TO_READ("Kept, to read later"),
    PHOTO_TO_READ("Photo, to read later"),
    NOT_EXAMINED("Not examined");

    private final String words;

    JawStatus(String words) {
        this.words = words;
    }

    /** The value as screens say it. */
    public String words() {
        return words;
    }
}
