package org.dentary.jaw.key;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.dentary.jaw.key.JawAnswer.Contradiction;

/**
 * One row of the table of contradictions. Two rows may share an id where the same sight weighs differently.
 *
 * @param id {@code J01} to {@code J28}, or {@code K01} to {@code K05} for the key's own consistency
 * @param severity what it does to the reading
 * @param exit whether "abnormal or damaged jaw" is a way out: the refusal then becomes a {@code CONFIRM}
 * @param secondReader whether another person must read the jaw
 * @param lowersCertainty whether a clear age becomes a probable one
 * @param teeth positions to look at again
 * @param seen when the rule speaks
 * @param message what was seen, why it cannot be, what to look at
 */
public record JawRule(
        String id,
        Severity severity,
        boolean exit,
        boolean secondReader,
        boolean lowersCertainty,
        List<Integer> teeth,
        Predicate<JawFacts> seen,
        String message) {

    static final String ABNORMAL =
            " The jaw is called abnormal or damaged: write what is abnormal; a second reader decides.";

    static JawRule refuse(String id, List<Integer> teeth, Predicate<JawFacts> seen, String message) {
        return new JawRule(id, Severity.REFUSE, true, true, true, teeth, seen, message);
    }

    static JawRule confirm(String id, List<Integer> teeth, Predicate<JawFacts> seen, String message) {
        return new JawRule(id, Severity.CONFIRM, false, false, false, teeth, seen, message);
    }

    static JawRule flag(String id, List<Integer> teeth, Predicate<JawFacts> seen, String message) {
        return new JawRule(id, Severity.FLAG, false, false, false, teeth, seen, message);
    }

    /** The same refusal without the way out by an abnormal jaw: what was said cannot be of any jaw. */
    JawRule always() {
        return new JawRule(id, severity, false, secondReader, lowersCertainty, teeth, seen, message);
    }

    JawRule withSecondReader() {
        return new JawRule(id, severity, exit, true, lowersCertainty, teeth, seen, message);
    }

    JawRule lowering() {
        return new JawRule(id, severity, exit, secondReader, true, teeth, seen, message);
    }

    /** What the rule has to say of a reading; empty when nothing. */
    public Optional<Contradiction> of(JawFacts facts) {
        if (!seen.test(facts)) {
            return Optional.empty();
        }
        boolean excused = severity == Severity.REFUSE && exit && facts.jaw().abnormal();
        return Optional.of(new Contradiction(
                id, excused ? Severity.CONFIRM : severity, excused ? message + ABNORMAL : message, teeth));
    }
}
