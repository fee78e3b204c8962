package org.dentary.result.notification.letter;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotAllowed;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.result.notification.NotificationRules;

/** What letters say: written by one person, reviewed by another, every edition kept. */
@ApplicationScoped
public class WordingService {
    private static final List<String> OUTCOMES = List.of(
            "DETECTED",
            "NOT_DETECTED",
            "INCONCLUSIVE",
            "UNSUITABLE",
            "NOT_TESTED",
            "NOT_ATTRIBUTABLE",
            WordingRules.CORRECTION);

    private final WordingQueries queries;
    private final CurrentAccount account;
    private final Clock clock;
    private final EntityManager entities;

    WordingService(WordingQueries queries, CurrentAccount account, Clock clock, EntityManager entities) {
        this.queries = queries;
        this.account = account;
        this.clock = clock;
        this.entities = entities;
    }

    /** An edition and whether it was written now. */
    record Written(WordingView wording, boolean fresh) {}

    public List<WordingView> all() {
        return queries.all();
    }

    /**
     * The wording in force for an outcome: its newest reviewed edition.
     *
     * @throws RuleBroken (409) where none was reviewed yet
     */
    WordingView inForce(String outcome) {
        return queries.reviewed(outcome).stream()
                .findFirst()
                .orElseThrow(() -> new RuleBroken(
                        "WORDING_NOT_REVIEWED",
                        "No wording for " + NotificationRules.words(outcome)
                                + " was reviewed yet; a coordinator reviews one under Telling, Letters"));
    }

    /**
     * Writes a new edition.
     *
     * @param edition the next number; saying the same again changes nothing
     * @throws InvalidInput (422) with every fault of the wording
     * @throws RuleBroken (409) where that edition says something else, or a number would be left out
     */
    @Transactional
    Written write(String outcome, int edition, String wording) {
        requireOutcome(outcome);
        String text = wording.strip();
        List<WordingView> editions =
                all().stream().filter(one -> one.outcome().equals(outcome)).toList();
        WordingView there = editions.stream()
                .filter(one -> one.edition() == edition)
                .findFirst()
                .orElse(null);
        if (there != null) {
            if (there.wording().equals(text)) {
                return new Written(there, false);
            }
            throw new RuleBroken(
                    "EDITION_WRITTEN",
                    "Edition " + edition + " says something else and is kept; write edition " + next(editions));
        }
        List<FieldProblem> problems = WordingRules.problems(outcome, text);
        if (!problems.isEmpty()) {
            throw InvalidInput.of(problems);
        }
        if (edition != next(editions)) {
            throw new RuleBroken("EDITION_NOT_NEXT", "The next edition is " + next(editions));
        }
        queries.insert(outcome, edition, text, account.get().actor(), clock.instant());
        entities.flush();
        return new Written(edition(outcome, edition), true);
    }

    /**
     * Reviews an edition, which from then on is what letters say. Reviewing it again changes nothing.
     *
     * @throws NotAllowed (403) to who wrote it, and to a device without a person
     */
    @Transactional
    WordingView review(String outcome, int edition) {
        WordingView there = edition(outcome, edition);
        Account who = account.get();
        if (who.person() == null) {
            throw new NotAllowed(
                    "REVIEWER_UNNAMED",
                    "A review names a person, and " + who.username() + " is a device; sign in as yourself");
        }
        if (there.writtenBy().equals(who.actor())) {
            throw new NotAllowed("SECOND_PERSON", "You wrote this edition; another person reads and reviews it");
        }
        if (!there.isReviewed()) {
            queries.review(outcome, edition, who.actor(), clock.instant());
        }
        return edition(outcome, edition);
    }

    private WordingView edition(String outcome, int edition) {
        requireOutcome(outcome);
        return all().stream()
                .filter(one -> one.outcome().equals(outcome) && one.edition() == edition)
                .findFirst()
                .orElseThrow(() -> new NotFound(
                        "EDITION_UNKNOWN", "There is no edition " + edition + " of the letter for " + outcome));
    }

    private static int next(List<WordingView> editions) {
        return editions.stream().mapToInt(WordingView::edition).max().orElse(0) + 1;
    }

    private static void requireOutcome(String outcome) {
        if (!OUTCOMES.contains(outcome)) {
            throw new NotFound(
                    "OUTCOME_UNKNOWN", "There is no letter for '" + outcome + "'; " + String.join(", ", OUTCOMES));
        }
    }
}
