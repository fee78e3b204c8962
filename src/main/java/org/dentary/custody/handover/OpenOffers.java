package org.dentary.custody.handover;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.dentary.custody.chain.Answers.Mark;
import org.dentary.custody.chain.Rights;
import org.dentary.people.PeopleService;
import org.dentary.people.StoreView;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.Role;

/** The hand-overs that wait for the account at hand, and those of its own that wait for others. */
@ApplicationScoped
public class OpenOffers {
    private final HandOverQueries queries;
    private final HandOverViews views;
    private final Rights rights;
    private final PeopleService people;

    OpenOffers(HandOverQueries queries, HandOverViews views, Rights rights, PeopleService people) {
        this.queries = queries;
        this.views = views;
        this.rights = rights;
        this.people = people;
    }

    /** Whom the account acts for: the same as may accept. */
    public ActingFor acting() {
        Account account = rights.account();
        List<String> stores = account.person() == null
                ? List.of()
                : people.stores().stream()
                        .filter(store -> store.people().contains(account.person()))
                        .map(StoreView::code)
                        .toList();
        String organisation = account.person() == null
                ? null
                : people.person(account.person()).organisation();
        boolean anyParty = account.role() == Role.LIAISON || account.role() == Role.COORDINATOR;
        return new ActingFor(account.actor(), stores, anyParty, organisation == null ? "" : organisation);
    }

    /**
     * Offers to the account, to stores it may use and to organisations it acts for, the longest waiting first.
     *
     * @param after where the page before ended; null for the first
     */
    public List<HandOverView> toMe(ActingFor acting, Mark after, int most) {
        return views.all(queries.openTo(acting, after, most));
    }

    /** How many those are. */
    public long countToMe() {
        return queries.countOpenTo(acting());
    }

    /** Its own offers that nobody has answered, the longest waiting first. */
    public List<HandOverView> fromMe(ActingFor acting, Mark after, int most) {
        return views.all(queries.openFrom(acting.actor(), after, most));
    }

    /** How many those are. */
    public long countFromMe() {
        return queries.countOpenFrom(rights.actor());
    }

    /** Where a list of offers ends that ends with this one. */
    public static Mark mark(HandOverView offer) {
        return new Mark(offer.occurredAt().toString(), offer.id().toString());
    }
}
