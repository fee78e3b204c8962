package org.dentary.portal.find;

/** What a typed text was probably meant as. */
final class FindRules {
    private FindRules() {}

    /**
     * Whether a text was probably meant as a label's code, so that it is worth saying what is wrong with it: 9 to 11
     * letters and digits with at least one of each and no run of five digits, which numbers of other kinds have.
     */
    static boolean isMeantAsCode(String text) {
        String bare = text.replaceAll("[\\s\\p{Pd}_]", "");
        return bare.matches("[0-9A-Za-z]{9,11}")
                && bare.matches(".*[A-Za-z].*")
                && bare.matches(".*[0-9].*")
                && !bare.matches(".*[0-9]{5}.*");
    }
}
