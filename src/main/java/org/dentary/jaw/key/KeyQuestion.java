package org.dentary.jaw.key;

import java.util.List;

/**
 * The questions of the key, each with its answers and the drawings that show them. The walk, the exam page and the printed key
 * all read from here.
 */
public enum KeyQuestion {
    ROW_SEEN(
            "rowSeen",
            "Can you see the cheek teeth all the way to the back?",
            "Stiff jaws hide the back teeth. Feel behind the last tooth you see, or cut the cheek if your program allows it.",
            List.of(
                    new Answer("WHOLE", "Yes, to the back", "jaw-side"),
                    new Answer("FRONT_ONLY", "No, only the front", "row-front-only"))),
    CHEEK_TEETH(
            "cheekTeeth",
            "How many cheek teeth are through the gum or coming through?",
            "Count one side, from the front. Empty and broken sockets count.",
            List.of(
                    new Answer("6", "Six", "row-six"),
                    new Answer("5", "Five", "row-five"),
                    new Answer("4", "Four", "row-four"),
                    new Answer("3", "Three or fewer", "row-three"))),
    THIRD_CUSPS(
            "thirdTooth.cusps",
            "How many cusps has the third tooth from the front?",
            "Position 3: three cusps is the milk tooth (dp4), two cusps the permanent one (P4).",
            List.of(
                    new Answer("3", "Three cusps", "third-three-cusps"),
                    new Answer("2", "Two cusps", "third-two-cusps"),
                    new Answer("CAP", "A loose milk cap on a rising tooth", "third-loose-cap"))),
    THIRD_ERUPTION(
            "thirdTooth.eruption",
            "Is the third tooth fully up?",
            "Position 3 (P4): compare its height with its neighbors.",
            List.of(
                    new Answer("ERUPTING", "Still coming up", "third-erupting"),
                    new Answer("FULL", "Fully up", "third-full"))),
    THIRD_DENTINE(
            "thirdTooth.dentine",
            "Is there a brown line of dentine on the third tooth?",
            "Position 3 (P4): look down on the crest on the tongue side.",
            List.of(
                    new Answer("NOT_EXPOSED", "No line, edges sharp", "dentine-none"),
                    new Answer("TRACE", "A trace", "dentine-trace"),
                    new Answer("DEFINED", "A defined line", "dentine-line"))),
    SIXTH_DENTINE(
            "sixthTooth.dentine",
            "Is there a brown line of dentine on the sixth tooth, the last?",
            "Position 6 (M3): look down on the crest on the tongue side.",
            List.of(
                    new Answer("NOT_EXPOSED", "No line, edges sharp", "dentine-none"),
                    new Answer("TRACE", "A trace", "dentine-trace"),
                    new Answer("DEFINED", "A defined line", "dentine-line"))),
    SIXTH_ERUPTION(
            "sixthTooth.eruption",
            "Is the sixth tooth, the last, fully up?",
            "Position 6 (M3): look at its rear cusp.",
            List.of(
                    new Answer("ERUPTING", "Still coming up", "sixth-erupting"),
                    new Answer("FULL", "Fully up", "sixth-full")));

    private final String field;
    private final String question;
    private final String hint;
    private final List<Answer> answers;

    KeyQuestion(String field, String question, String hint, List<Answer> answers) {
        this.field = field;
        this.question = question;
        this.hint = hint;
        this.answers = answers;
    }

    /**
     * @param value value of the field, or {@code CAP} for the loose milk cap
     * @param words the answer in words
     * @param drawing name of the drawing that shows it
     */
    public record Answer(String value, String words, String drawing) {}

    /** The field of the observation that answers it; also its name in {@code unsure}. */
    public String field() {
        return field;
    }

    /** The question in words. */
    public String question() {
        return question;
    }

    /** Where and how to look. */
    public String hint() {
        return hint;
    }

    /** Names of drawings that help to see what is asked, beside those of its answers; may be empty. */
    public List<String> aids() {
        return this == THIRD_DENTINE || this == SIXTH_DENTINE ? List.of("edge-sharp", "edge-rounded") : List.of();
    }

    /** Its answers in the order shown; "unsure" may be given to every question and is not among them. */
    public List<Answer> answers() {
        return answers;
    }

    /** The words of an answer; the value itself where it has none of its own. */
    public String words(Object value) {
        return answers.stream()
                .filter(answer -> answer.value().equals(String.valueOf(value)))
                .map(Answer::words)
                .findFirst()
                .orElse(String.valueOf(value));
    }
}
