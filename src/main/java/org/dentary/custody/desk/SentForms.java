package org.dentary.custody.desk;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.codes.LabelCode;
import org.dentary.codes.NotACode;
import org.dentary.custody.handover.HandOverService;
import org.dentary.custody.handover.HandOverView;
import org.dentary.custody.handover.OpenOffers;
import org.dentary.people.PeopleService;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;

/** Knows a form that was sent before, so that a button pressed twice, or a page loaded again, acts once. */
@ApplicationScoped
class SentForms {
    private final HandOverService handOvers;
    private final OpenOffers offers;
    private final PeopleService people;
    private final CurrentAccount current;

    SentForms(HandOverService handOvers, OpenOffers offers, PeopleService people, CurrentAccount current) {
        this.handOvers = handOvers;
        this.offers = offers;
        this.people = people;
        this.current = current;
    }

    /**
     * Whether this hand-over was made from this very form.
     *
     * @throws RuleBroken (409) if the form was sent before and says something else now
     */
    boolean isSentAlready(UUID id, HandOverForm form) {
        HandOverView made;
        try {
            made = handOvers.view(id);
        } catch (NotFound none) {
            return false;
        }
        Set<String> codes = made.items().stream().map(HandOverView.Item::code).collect(Collectors.toSet());
        boolean same = made.offeredBy().equals(current.get().actor())
                && HandOverForm.said(form.to) != null
                && made.to().equals(people.custodian(form.receiver).code())
                && HandOverForm.lines(form.codes).stream().allMatch(typed -> codes.contains(plain(typed)));
        if (!same) {
            throw new RuleBroken(
                    "FORM_SENT",
                    "This form was sent already with other content; it stands as it was sent. Load the page again to"
                            + " hand over more");
        }
        return true;
    }

    /** The same, without a word where it says something else. */
    boolean isSent(UUID id, HandOverForm form) {
        try {
            return isSentAlready(id, form);
        } catch (DomainException other) {
            return false;
        }
    }

    /** Whether the account at hand answered this offer before, so that nobody waits any more. */
    boolean isAnsweredAlready(UUID id) {
        return offers.isAnsweredByMe(id);
    }

    private static String plain(String typed) {
        try {
            return LabelCode.parse(typed).value();
        } catch (NotACode fault) {
            return typed;
        }
    }
}
