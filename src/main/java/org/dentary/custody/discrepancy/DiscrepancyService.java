package org.dentary.custody.discrepancy;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.custody.chain.ChainWriter;
import org.dentary.custody.chain.CustodyKind;
import org.dentary.custody.chain.CustodyQueries;
import org.dentary.custody.chain.Head;
import org.dentary.custody.chain.Labels;
import org.dentary.custody.chain.Moment;
import org.dentary.custody.chain.Moments;
import org.dentary.custody.chain.Planned;
import org.dentary.custody.chain.Rights;
import org.dentary.custody.chain.Stored;
import org.dentary.custody.discrepancy.DiscrepancyQueries.DiscrepancyRow;
import org.dentary.custody.evidence.EvidenceWriter;
import org.dentary.people.Custodian;
import org.dentary.people.PeopleService;
import org.dentary.platform.account.Role;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotAllowed;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;

/** What does not add up: opened by a count or by hand, owned by somebody, settled with an outcome. */
@ApplicationScoped
public class DiscrepancyService {
    private static final String RESOURCE = "discrepancy";

    private final DiscrepancyQueries queries;
    private final Labels labels;
    private final Moments moments;
    private final Rights rights;
    private final ChainWriter chains;
    private final EvidenceWriter entries;
    private final PeopleService people;
    private final RepeatableRequests requests;
    private final Discrepancies discrepancies;
    private final DiscrepancyViews views;

    DiscrepancyService(
            DiscrepancyQueries queries,
            Labels labels,
            Moments moments,
            Rights rights,
            ChainWriter chains,
            EvidenceWriter entries,
            PeopleService people,
            RepeatableRequests requests,
            Discrepancies discrepancies,
            DiscrepancyViews views) {
        this.queries = queries;
        this.labels = labels;
        this.moments = moments;
        this.rights = rights;
        this.chains = chains;
        this.entries = entries;
        this.people = people;
        this.requests = requests;
        this.discrepancies = discrepancies;
        this.views = views;
    }

    /**
     * Opens a discrepancy, changes it or, with an outcome, settles it; the code's chain tells of opening and settling.
     *
     * @throws InvalidInput for a code that is not ours or an owner who is no person
     * @throws NotAllowed if a sampler changes one that is not their own
     */
    @Transactional
    public Stored<DiscrepancyView> put(UUID id, PutDiscrepancy command, String ifMatch) {
        DiscrepancyRow before = queries.lock(id.toString()).orElse(null);
        Seen seen =
                requests.compare(RESOURCE, id.toString(), command, ifMatch, before == null ? null : before.version());
        if (seen == Seen.REPLAY) {
            return new Stored<>(views.view(id), false);
        }
        CustodyQueries.LabelRow label = labels.label("code", command.code());
        String owner = owner(command.owner());
        requireOwn(before == null ? owner : before.owner(), before);
        Head head = chains.lock(List.of(label.code())).get(label.code());
        Moment moment = moments.moment(null, command.enteredAt(), command.reason(), null, Labels.zone(List.of(label)));
        DiscrepancyRow row = row(id, command, label.code(), owner, before, moment.receivedAt(), moment.actor());
        if (before == null) {
            queries.insert(List.of(row.id()), List.of(row.code()), row);
        }
        if (before != null || row.outcome() != null) {
            queries.change(row);
        }
        tell(row, before, head, moment, command.photos());
        requests.accept(RESOURCE, id.toString(), command);
        return new Stored<>(views.view(id), before == null);
    }

    /**
     * Settles one as a form says, once however often the form is sent.
     *
     * @param said what the form said, whatever it was then made into
     * @throws org.dentary.platform.problem.StaleVersion if it was changed or settled otherwise since the form was loaded
     */
    @Transactional
    void settleForm(UUID id, PutDiscrepancy command, Object said, String ifMatch) {
        queries.lock(id.toString());
        String key = id + " by " + rights.actor();
        if (!requests.isFormKnown(RESOURCE, key, said)) {
            put(id, command, ifMatch);
            requests.acceptForm(RESOURCE, key, said);
        }
    }

    /**
     * Opens a discrepancy of the same kind for each code, set-based, owned by the account at hand; each chain tells of it.
     * A code that has an open one of that kind and subject is passed over.
     *
     * @param subject what they arose in, such as a submission's id
     * @param photos ids of photographs that show them, kept before by the account at hand; empty for none
     * @return how many entries on chains tell of it
     */
    @Transactional
    public int openAll(
            Collection<String> codes, PutDiscrepancy.Kind kind, String evidence, String subject, List<UUID> photos) {
        DiscrepancyQueries.Filter ofSubject = new DiscrepancyQueries.Filter(true, null, null, subject, null, null);
        Set<String> open = queries.list(ofSubject, Integer.MAX_VALUE).stream()
                .filter(one -> one.kind().equals(kind.name()))
                .map(DiscrepancyRow::code)
                .collect(Collectors.toSet());
        List<String> fresh = codes.stream()
                .distinct()
                .filter(code -> !open.contains(code))
                .sorted()
                .toList();
        if (fresh.isEmpty()) {
            return 0;
        }
        Map<String, Head> heads = chains.lock(fresh);
        Moment moment = moments.moment(
                (java.time.OffsetDateTime) null,
                null,
                null,
                (String) null,
                Labels.zone(labels.labels("codes", List.of(fresh.get(0)))));
        Map<String, UUID> opened = discrepancies.open(fresh, kind.name(), rights.actor(), evidence, subject, moment);
        List<Planned> planned = opened.entrySet().stream()
                .filter(one -> heads.containsKey(one.getKey()))
                .map(one -> new Planned(
                        Discrepancies.draft(moment, heads.get(one.getKey()), kind.name(), one.getValue(), evidence),
                        // What was not counted in was not in its box.
                        kind == PutDiscrepancy.Kind.SHORT
                                ? heads.get(one.getKey()).in(null)
                                : heads.get(one.getKey())))
                .toList();
        if (!planned.isEmpty()) {
            entries.append(planned, photos);
            discrepancies.show(
                    opened.entrySet().stream()
                            .filter(one -> heads.containsKey(one.getKey()))
                            .map(Map.Entry::getValue)
                            .toList(),
                    photos);
        }
        return planned.size();
    }

    private void tell(DiscrepancyRow row, DiscrepancyRow before, Head head, Moment moment, List<UUID> photos) {
        boolean opened = before == null || (before.closedAt() != null && row.outcome() == null);
        boolean settled = row.outcome() != null && (before == null || before.outcome() == null);
        if (head == null || !(opened || settled)) {
            if (photos != null && !photos.isEmpty()) {
                throw InvalidInput.field(
                        "photos",
                        "NO_ENTRY_FOR_PHOTOS",
                        head == null
                                ? "Nothing was collected under " + row.code()
                                        + " yet, so that no entry can hold a photo;" + " say in words what shows it"
                                : "Photos go with the entry that opens or settles it; send them with its outcome");
            }
            return;
        }
        List<Planned> planned = new ArrayList<>();
        if (opened) {
            planned.add(new Planned(
                    Discrepancies.draft(moment, head, row.kind(), UUID.fromString(row.id()), row.evidence()), head));
        }
        if (settled) {
            planned.add(new Planned(
                    moment.draft(CustodyKind.DISCREPANCY_RESOLVED, head)
                            .with("discrepancy", row.id())
                            .with("discrepancyKind", row.kind())
                            .with("outcome", row.outcome())
                            .with("evidence", opened ? null : Moments.redacted("evidence", seenSince(row, before))),
                    head));
        }
        entries.append(planned, photos);
        discrepancies.show(List.of(UUID.fromString(row.id())), photos);
    }

    /** What was seen since, without what an entry tells already. */
    private static String seenSince(DiscrepancyRow row, DiscrepancyRow before) {
        String told = before.evidence() == null ? "" : before.evidence() + ". ";
        boolean goesOn = row.evidence() != null && row.evidence().startsWith(told);
        return Objects.equals(row.evidence(), before.evidence())
                ? null
                : goesOn ? row.evidence().substring(told.length()) : row.evidence();
    }

    private static DiscrepancyRow row(
            UUID id, PutDiscrepancy command, String code, String owner, DiscrepancyRow before, Instant now, String by) {
        String outcome = command.outcome() == null ? null : command.outcome().name();
        Instant closedAt = outcome == null
                ? null
                : before != null && Objects.equals(before.outcome(), outcome) ? before.closedAt() : now;
        return new DiscrepancyRow(
                id.toString(),
                code,
                command.kind().name(),
                owner,
                command.dueOn(),
                command.evidence(),
                outcome,
                before == null ? null : before.subject(),
                before == null ? by : before.openedBy(),
                before == null ? now : before.openedAt(),
                closedAt,
                before == null ? 0 : before.version(),
                null,
                null);
    }

    private String owner(String typed) {
        Custodian owner = people.custodians(List.of(typed.strip())).get(typed.strip());
        if (owner == null || owner.kind() != Custodian.Kind.PERSON) {
            throw InvalidInput.field(
                    "owner", "OWNER_UNKNOWN", "'" + typed + "' is no person and no account; name who settles it");
        }
        return owner.code();
    }

    private void requireOwn(String owner, DiscrepancyRow before) {
        String actor = rights.actor();
        boolean own = owner.equals(actor) || before == null || before.openedBy().equals(actor);
        if (rights.account().role() == Role.SAMPLER && !own) {
            throw new NotAllowed(
                    "NOT_YOURS", "This discrepancy is " + owner + "'s; they or the laboratory liaison settle it");
        }
    }
}
