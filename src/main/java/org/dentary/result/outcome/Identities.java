package org.dentary.result.outcome;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.result.FindingStatus;
import org.dentary.result.FindingWord;

/**
 * What the identity exceptions of an animal's tissue make of its findings. A refused specimen speaks of no animal: its
 * findings are left out and its orders hold nothing, whatever was found in it. A granted one counts, and the animal's line
 * says so for ever, whatever was found in it: a footnote that came with a finding would tell of one that is withheld.
 *
 * @param refused codes of specimens and pieces whose identity was refused
 * @param granted codes of specimens and pieces that were accepted by exception
 */
record Identities(Set<String> refused, Set<String> granted) {
    /** Footnote of an animal of which a specimen was accepted by exception. */
    static final String FOOTNOTE = "IDENTITY_EXCEPTION";

    static final Identities NONE = new Identities(Set.of(), Set.of());

    static Identities of(List<OutcomeQueries.Identity> rows) {
        return rows.isEmpty() ? NONE : new Identities(codes(rows, "REFUSED"), codes(rows, "GRANTED"));
    }

    private static Set<String> codes(List<OutcomeQueries.Identity> rows, String standing) {
        return rows.stream()
                .filter(row -> row.standing().equals(standing))
                .map(OutcomeQueries.Identity::code)
                .collect(Collectors.toSet());
    }

    /** Findings that speak of the animal; one on refused tissue together with other tissue does not. */
    List<TestFact> attributable(List<TestFact> findings) {
        return refused.isEmpty()
                ? findings
                : findings.stream().filter(this::isAttributable).toList();
    }

    private boolean isAttributable(TestFact finding) {
        return finding.specimens().stream().noneMatch(refused::contains);
    }

    /** Refused tissue awaits no result: it reads like a piece kept without an order. */
    List<TissueFact> attributableTissue(List<TissueFact> tissues) {
        return refused.isEmpty()
                ? tissues
                : tissues.stream()
                        .map(t -> refused.contains(t.code())
                                ? new TissueFact(t.code(), t.parent(), true, 0, 0, t.node(), t.obex())
                                : t)
                        .toList();
    }

    /** The outcome with what the exceptions add to it. */
    Derived told(Derived derived, List<TestFact> findings) {
        if (refused.isEmpty() && granted.isEmpty()) {
            return derived;
        }
        List<String> words = new ArrayList<>(List.of(derived.explanation()));
        if (!granted.isEmpty()) {
            words.add("a specimen was accepted by a signed identity exception");
        }
        if (!refused.isEmpty()) {
            words.add("what was found in a specimen whose identity was refused is left out");
        }
        return new Derived(
                derived.outcome(),
                String.join("; ", words),
                review(derived.review(), findings),
                granted.isEmpty() ? derived.footnotes() : (FOOTNOTE + " " + derived.footnotes()).strip());
    }

    private String review(String before, List<TestFact> findings) {
        boolean suspicion = findings.stream()
                .filter(f -> !isAttributable(f) && f.status() != FindingStatus.CANCELLED)
                .anyMatch(f -> f.word() == FindingWord.DETECTED || f.word() == FindingWord.SUSPECT);
        return suspicion
                ? Stream.of(before, "detected or suspected in tissue whose identity was refused: some animal has it")
                        .filter(text -> text != null)
                        .collect(Collectors.joining("; "))
                : before;
    }

    /** Of a line whose outcome is withheld only this footnote is told: the others tell what was found. */
    static String footnotesOfWithheld(String footnotes) {
        return (" " + footnotes + " ").contains(" " + FOOTNOTE + " ") ? FOOTNOTE : "";
    }
}
