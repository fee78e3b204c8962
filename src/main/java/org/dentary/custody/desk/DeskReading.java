package org.dentary.custody.desk;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.dentary.custody.desk.Desk.Part;
import org.dentary.custody.discrepancy.DiscrepancyViews;
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
    private final OpenOffers offers;
    private final HoldingsQueries holdings;
    private final DiscrepancyViews discrepancies;
    private final PeopleService people;
    private final PlanService plan;
    private final CurrentAccount current;

    DeskReading(
            OpenOffers offers,
            HoldingsQueries holdings,
            DiscrepancyViews discrepancies,
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
        return desk(Desk.Marks.NONE);
    }

    Desk desk(Desk.Marks after) {
        ActingFor acting = offers.acting();
        int most = Part.MOST + 1;
        return new Desk(
                Part.of(
                        offers.toMe(acting, after.toMe(), most),
                        offers.countToMe(),
                        "to-me",
                        after.toMe(),
                        OpenOffers::mark),
                Part.of(
                        offers.fromMe(acting, after.fromMe(), most),
                        offers.countFromMe(),
                        "from-me",
                        after.fromMe(),
                        OpenOffers::mark),
                Part.of(
                        holdings.inHand(acting, after.held(), most),
                        holdings.countInHand(acting),
                        "held",
                        after.held(),
                        Held::mark),
                Part.of(
                        holdings.inStores(acting, after.stored(), most),
                        holdings.countInStores(acting),
                        "stored",
                        after.stored(),
                        Held::mark),
                discrepancies.countMine(),
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
