package org.dentary.result.outcome;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.dentary.result.FindingStatus;
import org.dentary.result.FindingWord;
import org.dentary.result.Stage;

/** One animal's case for one disease, decided by its standing findings; the steps are those of {@link OutcomeRules}. */
final class OutcomeCase {
    private final List<TestFact> own;
    private final List<TestFact> pools;
    private final List<TissueFact> tissues;
    private final Map<String, String> parents = new HashMap<>();
    private final PlanFacts plan;
    private final Set<String> footnotes = new TreeSet<>();
    private final List<String> reviews = new ArrayList<>();

    OutcomeCase(List<TestFact> standing, List<TissueFact> tissues, PlanFacts plan) {
        this.own = standing.stream()
                .filter(f -> !f.pool())
                .sorted(OutcomeRules.LATER)
                .toList();
        this.pools = standing.stream()
                .filter(TestFact::pool)
                .sorted(OutcomeRules.LATER)
                .toList();
        this.tissues = tissues;
        this.plan = plan;
        tissues.forEach(t -> parents.put(t.code(), t.parent()));
    }

    Derived decide() {
        noteConflicts();
        Optional<TestFact> detection = last(this::detects);
        if (detection.isPresent()) {
            if (detection.get().stage() != Stage.CONFIRMATORY) {
                footnotes.add("SCREENING_ALONE");
            }
            return derived(Outcome.DETECTED, detection.get().told());
        }
        Optional<TestFact> suspicion = last(f -> isSuspicion(f) && !closed(f));
        if (suspicion.isPresent()) {
            return derived(Outcome.SUSPECT, suspicion.get().told() + "; awaits confirmation");
        }
        Optional<String> waiting = waiting();
        if (waiting.isPresent()) {
            return derived(Outcome.PENDING, waiting.get());
        }
        Optional<TestFact> notDetected = last(f -> finalWord(f, FindingWord.NOT_DETECTED) && f.accepted() && stands(f));
        if (notDetected.isPresent()) {
            return derived(Outcome.NOT_DETECTED, notDetected.get().told());
        }
        Optional<TestFact> pool = passingPool();
        if (pool.isPresent()) {
            footnotes.add("POOL");
            return derived(Outcome.NOT_DETECTED, pool.get().told() + ", in a pool");
        }
        return withoutAWord();
    }

    private Derived withoutAWord() {
        Optional<TestFact> inconclusive = last(f -> finalWord(f, FindingWord.INCONCLUSIVE));
        if (inconclusive.isPresent()) {
            return derived(Outcome.INCONCLUSIVE, inconclusive.get().told());
        }
        Optional<TestFact> unsuitable = last(f -> finalWord(f, FindingWord.UNSUITABLE));
        if (unsuitable.isPresent()) {
            return derived(Outcome.UNSUITABLE, unsuitable.get().told());
        }
        Optional<TestFact> elsewhere =
                last(f -> f.status().isFinal() && f.word().speaksOfTheAnimal());
        if (elsewhere.isPresent()) {
            return derived(Outcome.UNSUITABLE, elsewhere.get().told() + ", on tissue that the method does not accept");
        }
        Optional<TestFact> notTested = last(f -> finalWord(f, FindingWord.NOT_TESTED));
        return derived(
                Outcome.NOT_TESTED,
                notTested
                        .map(TestFact::told)
                        .orElse(tissues.isEmpty() ? "no tissue taken" : "no test ordered and nothing reported"));
    }

    /** A final detection that counts: confirmed, or by screening where the plan lets it, and not overruled. */
    private boolean detects(TestFact f) {
        boolean counts = f.stage() == Stage.CONFIRMATORY || plan.screeningAlone();
        return counts && finalWord(f, FindingWord.DETECTED) && f.accepted() && stands(f);
    }

    /** A word that asks for confirmation: suspect, a detection not yet final or not yet confirmed, or on tissue not accepted. */
    private boolean isSuspicion(TestFact f) {
        return (f.word() == FindingWord.SUSPECT || f.word() == FindingWord.DETECTED) && !detects(f);
    }

    /**
     * Closed by a final word of a later stage that covers every specimen the suspicion named, or pieces of them; a
     * confirmation on other tissue, or one that could not be read, leaves it open. Within a stage the later day rules.
     */
    private boolean closed(TestFact suspicion) {
        return suspicion.specimens().stream()
                .allMatch(code -> own.stream()
                        .anyMatch(later -> later != suspicion
                                && later.status().isFinal()
                                && later.accepted()
                                && later.word().speaksOfTheAnimal()
                                && !isWord(later, FindingWord.SUSPECT)
                                && overrules(later, suspicion)
                                && later.specimens().stream().anyMatch(l -> isPieceOf(l, code))));
    }

    private static boolean overrules(TestFact later, TestFact earlier) {
        if (later.rank() != earlier.rank()) {
            return later.rank() > earlier.rank();
        }
        // The same stage again: only a confirmation repeated on a later day replaces a confirmation.
        return later.stage() == Stage.CONFIRMATORY
                && later.testedOn() != null
                && earlier.testedOn() != null
                && later.testedOn().isAfter(earlier.testedOn());
    }

    /** Whether no later final word on the same tissue says otherwise. */
    private boolean stands(TestFact f) {
        return own.stream()
                .noneMatch(later -> later != f
                        && later.status().isFinal()
                        && later.accepted()
                        && later.word().speaksOfTheAnimal()
                        && later.word() != f.word()
                        && overrules(later, f)
                        && f.specimens().stream()
                                .allMatch(code -> later.specimens().stream().anyMatch(l -> isPieceOf(l, code))));
    }

    private Optional<String> waiting() {
        List<String> unreported = tissues.stream()
                .filter(t -> t.orders() > t.reports())
                .map(TissueFact::code)
                .sorted()
                .toList();
        if (!unreported.isEmpty()) {
            return Optional.of("ordered and not reported: " + String.join(", ", unreported));
        }
        Optional<TestFact> preliminary = own.stream()
                .filter(f -> f.status() == FindingStatus.PRELIMINARY)
                .findFirst();
        if (preliminary.isPresent()) {
            return Optional.of("only preliminary: " + preliminary.get().told());
        }
        if (!pools.isEmpty() && !pools.stream().allMatch(this::settled)) {
            return Optional.of("tested in a pool only; waits to be tested alone");
        }
        List<String> unsent = tissues.stream()
                .filter(t -> t.orders() == 0 && !t.archived())
                .map(TissueFact::code)
                .sorted()
                .toList();
        if (own.isEmpty() && pools.isEmpty() && !unsent.isEmpty()) {
            return Optional.of("still to be sent: " + String.join(", ", unsent));
        }
        return Optional.empty();
    }

    /**
     * Whether a pool leaves nothing to wait for: it passes to its members, or the animal was tested alone; where the
     * pool gave reason for suspicion, on the tissue that was in it and with a word that speaks of the animal.
     */
    private boolean settled(TestFact pool) {
        boolean harmless = finalWord(pool, FindingWord.NOT_DETECTED)
                || pool.status().isFinal() && !pool.word().speaksOfTheAnimal();
        if (harmless) {
            return passingPool().isPresent()
                    || own.stream().anyMatch(f -> f.status().isFinal());
        }
        return own.stream()
                .anyMatch(f -> f.status().isFinal()
                        && f.word().speaksOfTheAnimal()
                        && f.specimens().stream()
                                .anyMatch(code -> pool.specimens().stream().anyMatch(of -> isPieceOf(code, of))));
    }

    private Optional<TestFact> passingPool() {
        boolean all = !pools.isEmpty()
                && plan.poolPasses()
                && own.stream().noneMatch(f -> finalWord(f, FindingWord.INCONCLUSIVE))
                && pools.stream().allMatch(f -> finalWord(f, FindingWord.NOT_DETECTED) && f.accepted());
        return all ? Optional.of(pools.get(pools.size() - 1)) : Optional.empty();
    }

    /** What is odd enough for a person to look: obex alone detected, or inconclusive beside not detected. */
    private void noteConflicts() {
        if (some(FindingWord.DETECTED, TissueFact::obex)
                && some(FindingWord.NOT_DETECTED, TissueFact::node)
                && !some(FindingWord.DETECTED, TissueFact::node)) {
            reviews.add("obex detected, node not detected: was it the right node?");
        }
        if (own.stream().anyMatch(f -> finalWord(f, FindingWord.INCONCLUSIVE) && stands(f))
                && own.stream().anyMatch(f -> finalWord(f, FindingWord.NOT_DETECTED) && stands(f))) {
            reviews.add("inconclusive beside not detected");
        }
        if (own.stream()
                .anyMatch(f -> f.stage() == Stage.CONFIRMATORY
                        && finalWord(f, FindingWord.DETECTED)
                        && f.accepted()
                        && !stands(f))) {
            reviews.add("a later confirmation contradicts an earlier detection");
        }
        own.stream()
                .filter(f -> f.word() == FindingWord.DETECTED
                        && !f.accepted()
                        && f.status().isFinal())
                .findFirst()
                .ifPresent(f -> reviews.add("detected on tissue that the method does not accept"));
    }

    private boolean some(FindingWord word, Predicate<TissueFact> kind) {
        Set<String> codes =
                tissues.stream().filter(kind).map(TissueFact::code).collect(Collectors.toCollection(HashSet::new));
        return own.stream()
                .anyMatch(f -> finalWord(f, word)
                        && stands(f)
                        && f.specimens().stream().anyMatch(codes::contains));
    }

    private boolean isPieceOf(String code, String whole) {
        for (String at = code; at != null; at = parents.get(at)) {
            if (at.equals(whole)) {
                return true;
            }
        }
        return false;
    }

    private Optional<TestFact> last(Predicate<TestFact> which) {
        return own.stream().filter(which).reduce((earlier, later) -> later);
    }

    private static boolean finalWord(TestFact f, FindingWord word) {
        return f.status().isFinal() && isWord(f, word);
    }

    private static boolean isWord(TestFact f, FindingWord word) {
        return f.word() == word;
    }

    private Derived derived(Outcome outcome, String explanation) {
        return new Derived(
                outcome,
                explanation,
                reviews.isEmpty() ? null : String.join("; ", reviews),
                String.join(" ", footnotes));
    }
}
