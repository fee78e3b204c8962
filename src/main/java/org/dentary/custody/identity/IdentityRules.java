package org.dentary.custody.identity;

import java.util.List;
import org.dentary.platform.account.Account;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotAllowed;
import org.dentary.platform.problem.RuleBroken;

/**
 * Who may ask and decide, and when. That an irreplaceable specimen goes through a form on which somebody vouches is
 * common practice of laboratories, no source; that two people stand for it is the design's.
 */
final class IdentityRules {
    /** Edition of the words that are signed; part of the hashed entry. */
    static final String STATEMENT = "1";

    /** What who asks puts their name to, in that edition. */
    static final String ASKED = "I vouch that this specimen is the one recorded under this code. It cannot be collected"
            + " again, and what I wrote is what I saw.";

    /** What who decides puts their name to, in that edition. */
    static final String DECIDED = "I looked at the evidence myself. I did not ask for this exception, and I decide"
            + " without regard to any result.";

    private IdentityRules() {}

    /** @throws NotAllowed for a shared device's account: a signature is one person's */
    static void requirePerson(Account account) {
        if (account.person() == null) {
            throw new NotAllowed(
                    "SIGNATURE_NEEDS_A_PERSON",
                    "Account " + account.username()
                            + " belongs to no person on the roster; sign under an account of your own");
        }
    }

    /** @throws InvalidInput where what is wrong is said by OTHER alone */
    static void requireWords(LabelProblem problem, String text) {
        if (problem == LabelProblem.OTHER && (text == null || text.isBlank())) {
            throw InvalidInput.field("problemText", "REQUIRED", "OTHER needs words: say what is wrong with the label");
        }
    }

    /** @throws RuleBroken if one is open already, or was granted */
    static void requireNoneStanding(List<IdentityExceptionView> before) {
        for (IdentityExceptionView one : before) {
            if (one.isOpen()) {
                throw new RuleBroken(
                        "EXCEPTION_OPEN",
                        one.askedByName() + " asked already for an identity exception of " + one.code()
                                + "; it waits for a second person");
            }
            if (one.isGranted()) {
                throw new RuleBroken(
                        "EXCEPTION_GRANTED",
                        one.code() + " was accepted by exception already, which is never withdrawn. What came to light"
                                + " since is a discrepancy or a re-attribution beside it");
            }
        }
    }

    /**
     * @throws NotAllowed if who decides is who asked
     * @throws RuleBroken if it was decided already
     */
    static void requireDecidable(IdentityExceptionView asked, String actor) {
        if (!asked.isOpen()) {
            throw new RuleBroken(
                    "DECIDED_ALREADY",
                    "This exception was " + asked.state().toLowerCase(java.util.Locale.ROOT) + " by "
                            + asked.decidedByName() + " at " + asked.decidedAt()
                            + ", for ever. After a refusal another one can be asked for, on new evidence");
        }
        if (asked.askedBy().equals(actor)) {
            throw new NotAllowed(
                    "SECOND_PERSON_NEEDED",
                    asked.askedByName()
                            + " asked for this exception; another person looks at the evidence and decides");
        }
    }
}
