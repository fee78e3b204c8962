package org.dentary.custody;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import org.dentary.custody.chain.ChainWriter;
import org.dentary.custody.chain.CustodyKind;
import org.dentary.custody.chain.CustodyQueries;
import org.dentary.custody.chain.Head;
import org.dentary.custody.chain.Holder;
import org.dentary.custody.chain.Labels;
import org.dentary.custody.chain.Limits;
import org.dentary.custody.chain.Moment;
import org.dentary.custody.chain.Moments;
import org.dentary.custody.chain.Past;
import org.dentary.custody.chain.Place;
import org.dentary.custody.chain.Planned;
import org.dentary.custody.chain.Rights;
import org.dentary.custody.evidence.EvidenceService;
import org.dentary.ledger.EventDraft;
import org.dentary.ledger.Sha256;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotAllowed;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;

/** Where custody begins, and who has what now. */
@ApplicationScoped
public class CustodyService {
    private final Labels labels;
    private final Moments moments;
    private final Rights rights;
    private final ChainWriter chains;
    private final CustodyQueries queries;
    private final CustodyViews views;
    private final EvidenceService evidence;

    CustodyService(
            Labels labels,
            Moments moments,
            Rights rights,
            ChainWriter chains,
            CustodyQueries queries,
            CustodyViews views,
            EvidenceService evidence) {
        this.labels = labels;
        this.moments = moments;
        this.rights = rights;
        this.chains = chains;
        this.queries = queries;
        this.views = views;
        this.evidence = evidence;
    }

    /**
     * Begins custody of specimens with the present account as custodian, or, for a piece, whoever holds its parent. Late
     * ones are marked, never refused for want of a reason.
     *
     * @param specimens each code once; an empty list does nothing
     * @return where they are now, in the order given
     * @throws InvalidInput for a time in the future, or a piece older than its parent
     * @throws NotAllowed if it was taken out of a store that the account may not use
     * @throws RuleBroken if custody of one has begun already
     */
    @Transactional
    public List<HeadView> collected(List<Collected> specimens) {
        if (specimens.isEmpty()) {
            return List.of();
        }
        Set<String> parents = new TreeSet<>();
        specimens.stream().map(Collected::parent).filter(Objects::nonNull).forEach(parents::add);
        Map<String, Head> parentHeads = chains.lock(parents);
        Rights.requireInCustody(parents, parentHeads);
        Map<String, Place> places = moments.places(specimens.stream()
                .map(Collected::place)
                .filter(place -> place != null && !place.isBlank())
                .distinct()
                .toList());
        ZoneId zone = Labels.zone(
                List.copyOf(queries.labels(List.of(specimens.get(0).code())).values()));
        Limits limits = moments.limits(specimens.get(0).occurredAt(), zone);
        // From their beginning on: what was cut from them before is still recorded.
        Past destroyed = rights.past(
                parentHeads.values().stream().filter(Head::isDestroyed).toList(), Instant.EPOCH);
        List<Planned> begun = new ArrayList<>();
        List<Planned> cut = new ArrayList<>();
        for (Collected specimen : specimens) {
            Place place = places.getOrDefault(specimen.place(), Place.NOT_SAID);
            requireMayEmpty(place);
            Moment moment =
                    moments.momentWithoutReason(specimen.occurredAt(), specimen.enteredAt(), null, place, zone, limits);
            Head parent = parentHeads.get(specimen.parent());
            if (parent != null) {
                Rights.requireThere(List.of(parent), new Past(specimen.occurredAt(), destroyed.chains()));
                cut.add(new Planned(moment.draft(CustodyKind.SPLIT, parent).with("child", specimen.code()), parent));
            }
            begun.add(first(specimen, moment, parent));
        }
        chains.begin(begun);
        chains.append(cut);
        Map<String, Head> heads =
                queries.heads(begun.stream().map(plan -> plan.next().code()).toList());
        return specimens.stream()
                .map(specimen -> HeadView.of(heads.get(specimen.code())))
                .toList();
    }

    private Planned first(Collected specimen, Moment moment, Head parent) {
        Holder holder = parent == null ? Holder.person(moment.actor()) : parent.holder();
        EventDraft draft = moment.first(CustodyKind.COLLECTED, specimen.code())
                .with("condition", specimen.condition())
                .with("parent", specimen.parent());
        return Planned.moving(
                draft,
                holder,
                new Head(
                        specimen.code(),
                        0,
                        Sha256.NOTHING_BEFORE,
                        holder,
                        null,
                        moment.place().shown(),
                        null,
                        CustodyKind.COLLECTED.name(),
                        moment.occurredAt(),
                        moment.occurredAt()));
    }

    /** A drop barrel is a locked store: who takes the first thing out of it is one of its people. */
    private void requireMayEmpty(Place place) {
        if (Holder.STORE.equals(place.kind()) && !rights.mayActFor(new Holder(Holder.STORE, place.code()))) {
            throw new NotAllowed(
                    "STORE_NOT_YOURS",
                    "You may not empty store " + place.code() + "; let its keeper, or one with access, empty it");
        }
    }

    /** Who has codes now; a code without a chain is left out. */
    public Map<String, HeadView> heads(Collection<String> codes) {
        Map<String, HeadView> views = new TreeMap<>();
        queries.heads(codes).forEach((code, head) -> views.put(code, HeadView.of(head)));
        return views;
    }

    /** Those of the codes that a laboratory has had at some time, wherever they are now. */
    public Set<String> received(Collection<String> codes) {
        return queries.received(codes);
    }

    /**
     * Who holds codes that the present account does not hold and acts for nobody who does; a code that it may move, or whose
     * custody never began, is left out.
     */
    public Map<String, HeadView> heldByAnother(Collection<String> codes) {
        Map<Holder, Boolean> may = new HashMap<>();
        Map<String, HeadView> others = new TreeMap<>();
        queries.heads(codes).forEach((code, head) -> {
            if (!may.computeIfAbsent(head.holder(), rights::mayActFor)) {
                others.put(code, HeadView.of(head));
            }
        });
        return others;
    }

    /**
     * A specimen's or box's chain, verified, with what is wrong with it; what a laboratory does with it only for those
     * who may know.
     *
     * @throws InvalidInput if it is no code
     * @throws NotFound if it is no label of ours, or nothing was collected under it yet
     */
    public CustodyView chain(String typed) {
        CustodyQueries.LabelRow label = labels.existingLabel(typed);
        Head head = queries.head(label.code())
                .orElseThrow(
                        () -> new NotFound("NOT_IN_CUSTODY", "Nothing was collected under " + label.code() + " yet"));
        return views.all(List.of(label), Map.of(label.code(), head)).get(0);
    }

    /**
     * The same for many codes, in as many statements as for one.
     *
     * @param codes label codes as kept, each once
     * @return in the order given; codes that are no label, or without a chain, are left out
     */
    public List<CustodyView> chains(List<String> codes) {
        Map<String, Head> heads = queries.heads(codes);
        Map<String, CustodyQueries.LabelRow> labels = queries.labels(codes);
        List<CustodyQueries.LabelRow> known = codes.stream()
                .filter(code -> labels.containsKey(code) && heads.containsKey(code))
                .map(labels::get)
                .toList();
        return known.isEmpty() ? List.of() : views.all(known, heads);
    }

    /**
     * The picture of a photograph that one of a code's events shows, JPEG.
     *
     * @param small whether the small copy will do
     * @throws NotFound if no event that the account may see shows it, or it was erased
     */
    public byte[] picture(String typed, UUID id, boolean small) {
        return chain(typed).events().stream()
                .flatMap(event -> event.photos().stream())
                .filter(photo -> photo.id().equals(id))
                .findFirst()
                .map(photo -> evidence.pictures(List.of(id), small).get(id))
                .orElseThrow(() ->
                        new NotFound("PHOTO_UNKNOWN", "No event of " + typed + " that you may see shows photo " + id));
    }
}
