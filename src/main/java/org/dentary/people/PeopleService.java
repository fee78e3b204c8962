package org.dentary.people;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.dentary.plan.PlanService;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.platform.account.Account;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotAllowed;
import org.dentary.platform.problem.NotFound;

/** Persons, organisations and stores, and who has acknowledged the protocol. Lists come in set-up order. */
@ApplicationScoped
public class PeopleService {
    private final PeopleQueries queries;
    private final AcknowledgementRepository acknowledgements;
    private final PlanService plan;
    private final Clock clock;

    PeopleService(PeopleQueries queries, AcknowledgementRepository acknowledgements, PlanService plan, Clock clock) {
        this.queries = queries;
        this.acknowledgements = acknowledgements;
        this.plan = plan;
        this.clock = clock;
    }

    /** Everyone on the roster, those who left included. */
    public List<PersonView> persons() {
        return queries.persons();
    }

    /**
     * The person of that roster code.
     *
     * @throws NotFound if nobody has it
     */
    public PersonView person(String code) {
        return queries.person(code)
                .orElseThrow(() -> new NotFound("PERSON_UNKNOWN", "No person '" + code + "' is on the roster"));
    }

    public List<PartyView> parties() {
        return queries.parties();
    }

    public List<StoreView> stores() {
        return queries.stores();
    }

    /**
     * Who is meant by a roster code, a sign-in name, a store, a party or a laboratory. A signed-in person is meant by
     * their roster code, a shared device by its sign-in name; capitals do not matter.
     *
     * @throws InvalidInput if nobody is meant
     */
    public Custodian custodian(String to) {
        Custodian found = to == null ? null : custodians(List.of(to.trim())).get(to.trim());
        if (found == null) {
            throw InvalidInput.field(
                    "to",
                    "CUSTODIAN_UNKNOWN",
                    "'" + to + "' is no person, account, store, party or laboratory of the plan; choose one of them");
        }
        return found;
    }

    /** As {@link #custodian}, for many in one query: typed to custodian; what nobody is meant by is left out. */
    public Map<String, Custodian> custodians(Collection<String> typed) {
        return typed.isEmpty()
                ? Map.of()
                : queries.custodians(typed).stream()
                        .collect(Collectors.toMap(
                                PeopleQueries.CustodianRow::typed,
                                PeopleQueries.CustodianRow::custodian,
                                (first, same) -> first));
    }

    /** Whether the person may put samples into the store and take them out. */
    public boolean mayUse(String store, String person) {
        return queries.mayUse(store, person);
    }

    /** Whether the account has acknowledged the protocol in force. */
    public boolean acknowledged(Account account) {
        return queries.acknowledged(account.username(), protocolVersion());
    }

    /**
     * Refuses until the account has acknowledged the protocol in force.
     *
     * @throws NotAllowed (403) naming the page where it is shown
     */
    public void requireAcknowledged(Account account) {
        if (!acknowledged(account)) {
            throw new NotAllowed(
                    "PROTOCOL_NOT_ACKNOWLEDGED",
                    account.username() + " has not acknowledged protocol " + protocolVersion()
                            + "; read it at /protocol and acknowledge it, then send this again");
        }
    }

    /** Records that the protocol in force was shown to the account and acknowledged; a second time changes nothing. */
    @Transactional
    public void acknowledge(Account account) {
        if (!acknowledged(account)) {
            acknowledgements.persist(new Acknowledgement(account.username(), protocolVersion(), clock.instant()));
            acknowledgements.flush();
        }
    }

    /** The edition of the protocol in force. */
    public String protocolVersion() {
        return plan.setting(PlanSetting.PROTOCOL_VERSION, null, null, null);
    }
}
