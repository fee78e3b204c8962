package org.dentary.prevalence.answer;

/**
 * An answer as it was stored.
 *
 * @param cut id of the data cut it stands on
 * @param question RFC 8785 form of what was asked
 * @param digest SHA-256 of the answer when it was stored, hex
 * @param ruleVersion version of the rules of reports that made it
 */
public record StoredAnswer(
        String cut, String question, String mediaType, String answer, String digest, String ruleVersion) {
    /** What tells it from every other. */
    public record Key(String cut, String question, String mediaType) {}
}
