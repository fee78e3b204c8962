package org.dentary.custody.desk;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.dentary.custody.discrepancy.DiscrepancyService;
import org.dentary.custody.handover.ActingFor;
import org.dentary.custody.handover.OpenOffers;
import org.dentary.people.PeopleService;
import org.dentary.plan.PlanService;
import org.dentary.plan.StationView;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.CurrentAccount;

/** Reads the desk of the account at hand. */
@ApplicationScoped
public class DeskReading {
    static final int MOST = 500;

    private final OpenOffers offers;
    private final HoldingsQueries holdings;
    private final DiscrepancyService discrepancies;
    private final PeopleService people;
    private final PlanService plan;
    private final CurrentAccount current;

    DeskReading(
            OpenOffers offers,
            HoldingsQueries holdings,
            DiscrepancyService discrepancies,
            PeopleService people,
            PlanService plan,
            CurrentAccount current) {
        this.offers = offers;
        this.holdings = holdings;
        this.discrepancies = discrepancies;
        this.people = people;
        this.plan = plan;
        this.current = current;
    }

    Desk desk() {
        ActingFor acting = offers.acting();
        return new Desk(
                offers.toMe(MOST),
                offers.fromMe(MOST),
                holdings.inHand(acting, MOST),
                holdings.inStores(acting, MOST),
                discrepancies.mine(true, MOST).size(),
                receivers(acting),
                zones());
    }

    /** The code of who is called so, where one receiver alone is; else what was typed, or null where nothing was. */
    String receiver(String given) {
        String typed = HandOverForm.said(given);
        if (typed == null) {
            return null;
        }
        List<String> called = receivers(offers.acting()).stream()
                .filter(one -> one.name().equalsIgnoreCase(typed))
                .map(Desk.Receiver::code)
                .distinct()
                .toList();
        return called.size() == 1 ? called.get(0) : typed;
    }

    private List<Desk.Receiver> receivers(ActingFor acting) {
        List<Desk.Receiver> receivers = new ArrayList<>();
        people.persons().stream()
                .filter(person -> person.active() && !person.code().equals(acting.actor()))
                .forEach(person -> receivers.add(new Desk.Receiver(person.code(), person.name())));
        people.stores().forEach(store -> receivers.add(new Desk.Receiver(store.code(), store.name())));
        people.parties().forEach(party -> receivers.add(new Desk.Receiver(party.code(), party.name())));
        plan.laboratories().forEach(one -> receivers.add(new Desk.Receiver(one.code(), one.name())));
        return receivers;
    }

    /** Time zones of the stations, those the account serves first. */
    public List<String> zones() {
        Account account = current.get();
        Set<String> zones = new LinkedHashSet<>();
        List<StationView> stations = plan.stations();
        stations.stream().filter(one -> account.serves(one.code())).forEach(one -> zones.add(one.timeZone()));
        stations.forEach(one -> zones.add(one.timeZone()));
        return zones.isEmpty() ? List.of("UTC") : List.copyOf(zones);
    }
}
