package org.dentary.custody.identity;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.animal.line.LineService;
import org.dentary.custody.chain.ChainWriter;
import org.dentary.custody.chain.CustodyKind;
import org.dentary.custody.chain.CustodyQueries;
import org.dentary.custody.chain.Head;
import org.dentary.custody.chain.Labels;
import org.dentary.custody.chain.Moment;
import org.dentary.custody.chain.Moments;
import org.dentary.custody.chain.Place;
import org.dentary.custody.chain.Planned;
import org.dentary.custody.chain.Rights;
import org.dentary.custody.chain.Stored;
import org.dentary.custody.evidence.EvidenceService;
import org.dentary.ledger.EventDraft;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.AccountService;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;

/**
 * A mislabeled specimen that cannot be collected again: one person vouches for it, another grants or refuses. Until then
 * the animal is counted nowhere; a granted one counts, with a footnote for ever; of a refused one nothing is attributed.
 */
@ApplicationScoped
public class IdentityExceptionService {
    private static final String RESOURCE = "identity-exception";

    private final IdentityExceptionQueries queries;
    private final IdentityExceptionViews views;
    private final Labels labels;
    private final Moments moments;
    private final Rights rights;
    private final ChainWriter chains;
    private final EvidenceService evidence;
    private final AccountService accounts;
    private final LineService lines;
    private final RepeatableRequests requests;
    private final Event<IdentitySettled> settled;

    IdentityExceptionService(
            IdentityExceptionQueries queries,
            IdentityExceptionViews views,
            Labels labels,
            Moments moments,
            Rights rights,
            ChainWriter chains,
            EvidenceService evidence,
            AccountService accounts,
            LineService lines,
            RepeatableRequests requests,
            Event<IdentitySettled> settled) {
        this.queries = queries;
        this.views = views;
        this.labels = labels;
        this.moments = moments;
        this.rights = rights;
        this.chains = chains;
        this.evidence = evidence;
        this.accounts = accounts;
        this.lines = lines;
        this.requests = requests;
        this.settled = settled;
    }

    /**
     * Asks for an exception, signed. Sent again it changes nothing.
     *
     * @throws InvalidInput for a code that is not ours or no specimen, a wrong password, a discrepancy of another code
     * @throws RuleBroken (409) if the specimen was not received, or has an exception that is open or granted
     */
    @Transactional
    public Stored<IdentityExceptionView> ask(UUID id, AskIdentityException command) {
        Account signer = signed(command.password());
        IdentityRules.requireWords(command.problem(), command.problemText());
        CustodyQueries.LabelRow label = labels.label("code", command.code());
        AskIdentityException unsigned = command.unsigned(label.code());
        Integer version = queries.byId(id).isPresent() ? 0 : null;
        if (requests.compare(RESOURCE, id.toString(), unsigned, version != null) == Seen.REPLAY) {
            return new Stored<>(views.view(id), false);
        }
        requireSpecimen(label.code());
        requireItsDiscrepancy(label.code(), command.discrepancy());
        Map<String, Head> heads = chains.lock(List.of(label.code()));
        Rights.requireInCustody(List.of(label.code()), heads);
        // Read again behind the lock: the very same may have been sent twice at this moment.
        if (queries.byId(id).isPresent()) {
            requests.compare(RESOURCE, id.toString(), unsigned, true);
            return new Stored<>(views.view(id), false);
        }
        requireReceived(label.code());
        IdentityRules.requireNoneStanding(views.of(label.code()));
        Moment moment = moments.moment(
                moments.now(), null, command.irreplaceable(), Place.NOT_SAID, Labels.zone(List.of(label)));
        List<Map<String, String>> photos = evidence.digests(command.photos());
        Head head = heads.get(label.code());
        EventDraft draft = moment.draft(CustodyKind.IDENTITY_EXCEPTION_ASKED, head)
                .with("identityException", id)
                .with("discrepancyKind", command.problem().name())
                .with("discrepancy", command.discrepancy())
                .with("problemText", Moments.redacted("problemText", command.problemText()))
                .with("evidence", Moments.redacted("evidence", command.evidence()))
                .with("evidencePhotos", photos.isEmpty() ? null : photos)
                .with("signedAs", signer.username())
                .with("statement", IdentityRules.STATEMENT);
        chains.append(List.of(new Planned(draft, head)));
        evidence.show(List.of(draft.id()), command.photos());
        queries.ask(
                id,
                label.code(),
                command.problem(),
                command.discrepancy(),
                draft.id(),
                moment.actor(),
                moment.receivedAt());
        requests.accept(RESOURCE, id.toString(), unsigned);
        settle(label.code(), "IDENTITY_EXCEPTION_ASKED");
        return new Stored<>(views.view(id), true);
    }

    /**
     * Grants or refuses, signed, once and for ever; by the same person in the same words again it changes nothing.
     *
     * @throws org.dentary.platform.problem.NotAllowed if who decides is who asked
     * @throws RuleBroken (409) if it was decided already
     */
    @Transactional
    public IdentityExceptionView decide(UUID id, DecideIdentityException command) {
        Account signer = signed(command.password());
        IdentityExceptionView found = views.view(id);
        Head head = chains.lock(List.of(found.code())).get(found.code());
        // Read again behind the lock: two who decide at once meet here.
        IdentityExceptionView asked = views.view(id);
        boolean repeated = !asked.isOpen()
                && asked.isGranted() == command.granted()
                && signer.actor().equals(asked.decidedBy())
                && command.reason().strip().equals(asked.decisionReason());
        if (repeated) {
            return asked;
        }
        IdentityRules.requireDecidable(asked, signer.actor());
        Moment moment = moments.moment(
                moments.now(),
                null,
                command.reason(),
                Place.NOT_SAID,
                Labels.zone(labels.labels("code", List.of(asked.code()))));
        EventDraft draft = moment.draft(
                        command.granted()
                                ? CustodyKind.IDENTITY_EXCEPTION_GRANTED
                                : CustodyKind.IDENTITY_EXCEPTION_REFUSED,
                        head)
                .with("identityException", id)
                .with("signedAs", signer.username())
                .with("statement", IdentityRules.STATEMENT);
        chains.append(List.of(new Planned(draft, head)));
        queries.decide(id, asked.askedBy(), command.granted(), draft.id(), moment.actor(), moment.receivedAt());
        settle(asked.code(), draft.kind());
        return views.view(id);
    }

    /** Whether an animal is counted, then what was found in it; in that order, as the second reads the first. */
    private void settle(String code, String cause) {
        List<String> kits = List.of(labels.label("code", code).kit());
        lines.settle(kits, cause);
        settled.fire(new IdentitySettled(kits, cause));
    }

    /** The account at hand, which is one person's and signed with its password. */
    private Account signed(String password) {
        Account account = rights.account();
        IdentityRules.requirePerson(account);
        if (!accounts.isPasswordOf(account, password)) {
            throw InvalidInput.field(
                    "password",
                    "SIGNATURE_WRONG",
                    "That is not the password of account " + account.username() + "; nothing was signed or recorded");
        }
        return account;
    }

    private void requireSpecimen(String code) {
        if (!queries.isSpecimen(code)) {
            throw InvalidInput.field(
                    "code",
                    "NOT_A_SPECIMEN",
                    "Nothing was collected under " + code + "; an exception is for a specimen that was taken in");
        }
    }

    private void requireReceived(String code) {
        if (!queries.isReceived(code)) {
            throw new RuleBroken(
                    "NOT_RECEIVED",
                    code + " has not been received at a laboratory; count it in first, then vouch for it");
        }
    }

    private void requireItsDiscrepancy(String code, UUID discrepancy) {
        if (discrepancy == null) {
            return;
        }
        String of = queries.codeOfDiscrepancy(discrepancy)
                .orElseThrow(() -> InvalidInput.field(
                        "discrepancy", "DISCREPANCY_UNKNOWN", "There is no discrepancy " + discrepancy));
        if (!of.equals(code)) {
            throw InvalidInput.field(
                    "discrepancy",
                    "DISCREPANCY_OF_ANOTHER",
                    "Discrepancy " + discrepancy + " is about " + of + ", not about " + code);
        }
    }
}
