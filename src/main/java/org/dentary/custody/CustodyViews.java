package org.dentary.custody;

import jakarta.enterprise.context.ApplicationScoped;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.custody.chain.CustodyQueries;
import org.dentary.custody.chain.CustodyRules;
import org.dentary.custody.chain.Head;
import org.dentary.custody.chain.Holder;
import org.dentary.custody.chain.Limits;
import org.dentary.custody.chain.Moments;
import org.dentary.custody.chain.RecordedEvent;
import org.dentary.custody.chain.Rights;
import org.dentary.custody.chain.Step;
import org.dentary.custody.discrepancy.DiscrepancyView;
import org.dentary.custody.discrepancy.DiscrepancyViews;
import org.dentary.custody.event.EventViews;
import org.dentary.custody.evidence.ErasedText;
import org.dentary.custody.evidence.EvidenceService;
import org.dentary.custody.evidence.EvidenceView;
import org.dentary.custody.evidence.TextErasureService;
import org.dentary.custody.handover.HandOverService;
import org.dentary.custody.handover.HandOverView;
import org.dentary.custody.identity.IdentityExceptionView;
import org.dentary.custody.identity.IdentityExceptionViews;
import org.dentary.ledger.Chain;
import org.dentary.ledger.ChainHead;
import org.dentary.ledger.Difference;
import org.dentary.ledger.LedgerEvent;
import org.dentary.ledger.LedgerStore;
import org.dentary.ledger.Redacted;
import org.dentary.plan.LaboratoryView;
import org.dentary.plan.PlanService;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.PlanSettings;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.Act;

/** Reads chains for people: checks them, derives what is wrong, and names everybody and every place in them. */
@ApplicationScoped
class CustodyViews {
    private final CustodyQueries queries;
    private final HandOverService handOvers;
    private final DiscrepancyViews discrepancies;
    private final IdentityExceptionViews identities;
    private final LedgerStore ledger;
    private final EvidenceService evidence;
    private final TextErasureService texts;
    private final PlanService plan;
    private final Moments moments;
    private final Rights rights;

    CustodyViews(
            CustodyQueries queries,
            HandOverService handOvers,
            DiscrepancyViews discrepancies,
            IdentityExceptionViews identities,
            LedgerStore ledger,
            EvidenceService evidence,
            TextErasureService texts,
            PlanService plan,
            Moments moments,
            Rights rights) {
        this.queries = queries;
        this.handOvers = handOvers;
        this.discrepancies = discrepancies;
        this.identities = identities;
        this.ledger = ledger;
        this.evidence = evidence;
        this.texts = texts;
        this.plan = plan;
        this.moments = moments;
        this.rights = rights;
    }

    /**
     * The chains of labels that have one, however many in the same number of statements.
     *
     * @return in the order given
     */
    List<CustodyView> all(List<CustodyQueries.LabelRow> labels, Map<String, Head> heads) {
        List<String> codes = labels.stream().map(CustodyQueries.LabelRow::code).toList();
        Map<String, List<LedgerEvent>> recorded = ledger.chains(codes);
        // What was damaged so that it cannot be read is named by the check; the rest is still told.
        Map<String, List<RecordedEvent>> readable = recorded.values().stream()
                .flatMap(List::stream)
                .flatMap(event -> RecordedEvent.readable(event).stream())
                .collect(Collectors.groupingBy(event -> event.event().chain()));
        List<RecordedEvent> events =
                readable.values().stream().flatMap(List::stream).toList();
        List<UUID> ids = events.stream().map(event -> event.event().id()).toList();
        Instant now = moments.now();
        Known known = new Known(
                now,
                moments.limits(now, ZoneOffset.UTC),
                queries.names(codesIn(events, heads.values())),
                ledger.secrets(ids),
                evidence.ofEvents(ids),
                texts.ofEvents(ids),
                limitsByPreservation(plan.settings()),
                queries.preservations(codes).stream()
                        .collect(Collectors.groupingBy(CustodyQueries.PreservationRow::code)),
                offers(heads.values()),
                discrepancies.ofCodes(codes).stream().collect(Collectors.groupingBy(DiscrepancyView::code)),
                identities.ofCodes(codes));
        boolean follows = mayFollowToTheLaboratory(rights.account());
        Set<String> laboratories =
                plan.laboratories().stream().map(LaboratoryView::code).collect(Collectors.toSet());
        return labels.stream()
                .map(label -> view(
                        label,
                        heads.get(label.code()),
                        recorded.getOrDefault(label.code(), List.of()),
                        readable.getOrDefault(label.code(), List.of()),
                        known))
                .map(whole -> follows ? whole : Veil.over(whole, laboratories))
                .toList();
    }

    /** What the chains at hand have in common. */
    private record Known(
            Instant now,
            Limits limits,
            Map<String, String> names,
            Map<UUID, Map<String, Redacted>> texts,
            Map<UUID, List<EvidenceView>> photos,
            Map<UUID, List<ErasedText>> erasures,
            Map<String, Limits.Temperatures> temperatures,
            Map<String, List<CustodyQueries.PreservationRow>> preservations,
            Map<UUID, HandOverView> offers,
            Map<String, List<DiscrepancyView>> discrepancies,
            Map<String, List<IdentityExceptionView>> identityExceptions) {
        String name(String code) {
            return code == null ? null : names.getOrDefault(code, code.equals(Holder.CARRIER) ? "the carrier" : code);
        }

        /** Limits by how the specimen was kept at a moment; a box has none. */
        Limits.Temperatures temperatures(String code, Instant at) {
            String preservation = null;
            for (CustodyQueries.PreservationRow row : preservations.getOrDefault(code, List.of())) {
                if (preservation == null || !row.since().isAfter(at)) {
                    preservation = row.preservation();
                }
            }
            return preservation == null
                    ? Limits.Temperatures.ANY
                    : temperatures.getOrDefault(preservation, Limits.Temperatures.ANY);
        }

        CustodyView.Offer offer(UUID id) {
            HandOverView offer = id == null ? null : offers.get(id);
            return offer == null
                    ? null
                    : new CustodyView.Offer(
                            offer.id(), offer.to(), offer.toName(), offer.occurredAt(), offer.overdue());
        }
    }

    private static CustodyView view(
            CustodyQueries.LabelRow label,
            Head head,
            List<LedgerEvent> recorded,
            List<RecordedEvent> events,
            Known known) {
        List<Step> steps = events.stream().map(RecordedEvent::step).toList();
        List<String> differences = Stream.concat(
                        Chain.verify(recorded, new ChainHead(head.code(), head.sequence(), head.hash())).stream(),
                        Chain.verifyOutside(recorded, known.texts()).stream())
                .map(Difference::toString)
                .toList();
        Instant since = CustodyRules.lastMove(steps).map(Step::occurredAt).orElse(head.collectedAt());
        Map<Boolean, List<DiscrepancyView>> wrong = known.discrepancies().getOrDefault(label.code(), List.of()).stream()
                .collect(Collectors.partitioningBy(one -> one.closedAt() == null));
        return new CustodyView(
                label.code(),
                label.part(),
                label.kit(),
                label.timeZone(),
                head.holder().code(),
                head.holder().kind(),
                known.name(head.holder().code()),
                head.place(),
                known.name(head.place()),
                since,
                differences.isEmpty(),
                differences,
                head.collectedAt(),
                CustodyRules.hours(head.collectedAt(), known.now()),
                head.box(),
                CustodyRules.isLost(steps, known.now()),
                head.isDestroyed(),
                CustodyRules.isOnHold(steps),
                known.offer(head.offered()),
                CustodyRules.gaps(steps, known.limits().gap(), known.now()),
                CustodyRules.lateEntries(steps),
                CustodyRules.excursions(steps, at -> known.temperatures(label.code(), at)),
                CustodyRules.sealMismatches(steps),
                wrong.get(true),
                wrong.get(false),
                known.identityExceptions().getOrDefault(label.code(), List.of()),
                EventViews.of(events, known::name, known.texts(), known.photos(), known.erasures()));
    }

    /** Where tissue goes after its first laboratory tells what was found there; that is for those who may know. */
    private static boolean mayFollowToTheLaboratory(Account account) {
        return account.may(Act.DERIVED_OUTCOME);
    }

    private Map<UUID, HandOverView> offers(Collection<Head> heads) {
        List<UUID> offered = heads.stream()
                .map(Head::offered)
                .filter(Objects::nonNull)
                .distinct()
                .toList();
        return offered.isEmpty()
                ? Map.of()
                : handOvers.views(offered).stream().collect(Collectors.toMap(HandOverView::id, Function.identity()));
    }

    private static Map<String, Limits.Temperatures> limitsByPreservation(PlanSettings settings) {
        return Map.of(
                "FRESH_CHILLED",
                new Limits.Temperatures(
                        celsius(settings, PlanSetting.CHILLED_LOWEST_CELSIUS),
                        celsius(settings, PlanSetting.CHILLED_HIGHEST_CELSIUS)),
                "FROZEN",
                new Limits.Temperatures(null, celsius(settings, PlanSetting.FROZEN_HIGHEST_CELSIUS)),
                "FORMALIN",
                new Limits.Temperatures(celsius(settings, PlanSetting.FORMALIN_LOWEST_CELSIUS), null));
    }

    private static BigDecimal celsius(PlanSettings settings, PlanSetting setting) {
        return BigDecimal.valueOf(settings.wholeNumber(setting, null, null, null));
    }

    private static TreeSet<String> codesIn(List<RecordedEvent> events, Collection<Head> heads) {
        TreeSet<String> codes = new TreeSet<>();
        heads.forEach(head -> add(codes, head.holder().code(), head.place()));
        events.forEach(event -> add(
                codes,
                event.text("actor"),
                event.text("counterparty"),
                event.text("place"),
                event.field("from"),
                event.field("custodian")));
        return codes;
    }

    private static void add(TreeSet<String> codes, String... some) {
        for (String code : some) {
            if (code != null) {
                codes.add(code);
            }
        }
    }
}
