package org.dentary.custody;

import jakarta.enterprise.context.ApplicationScoped;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Function;
import org.dentary.ledger.Chain;
import org.dentary.ledger.ChainHead;
import org.dentary.ledger.Difference;
import org.dentary.ledger.LedgerEvent;
import org.dentary.ledger.LedgerStore;
import org.dentary.ledger.Redacted;
import org.dentary.plan.PlanService;
import org.dentary.plan.PlanSetting;
import org.dentary.plan.PlanSettings;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.Act;

/** Reads a chain for people: checks it, derives what is wrong, and names everybody and every place in it. */
@ApplicationScoped
class CustodyViews {
    private final CustodyQueries queries;
    private final HandOverService handOvers;
    private final DiscrepancyService discrepancies;
    private final LedgerStore ledger;
    private final PlanService plan;
    private final Acts acts;

    CustodyViews(
            CustodyQueries queries,
            HandOverService handOvers,
            DiscrepancyService discrepancies,
            LedgerStore ledger,
            PlanService plan,
            Acts acts) {
        this.queries = queries;
        this.handOvers = handOvers;
        this.discrepancies = discrepancies;
        this.ledger = ledger;
        this.plan = plan;
        this.acts = acts;
    }

    /** A label's chain; the label has one. */
    CustodyView of(CustodyQueries.LabelRow label, Head head) {
        List<LedgerEvent> recorded = ledger.chain(label.code());
        List<RecordedEvent> events = recorded.stream().map(RecordedEvent::of).toList();
        List<Step> steps = events.stream().map(RecordedEvent::step).toList();
        Instant now = acts.now();
        Limits limits = acts.limits(now, ZoneOffset.UTC);
        Map<String, String> names = names(events, head);
        List<String> differences =
                Chain.verify(recorded, new ChainHead(head.code(), head.sequence(), head.hash())).stream()
                        .map(Difference::toString)
                        .toList();
        Step moved = CustodyRules.lastMove(steps).orElseThrow();
        CustodyView whole = new CustodyView(
                label.code(),
                label.part(),
                label.kit(),
                head.holder().code(),
                head.holder().kind(),
                name(names, head.holder().code()),
                head.place(),
                name(names, head.place()),
                moved.occurredAt(),
                differences.isEmpty(),
                differences,
                head.collectedAt(),
                CustodyRules.hours(head.collectedAt(), now),
                head.box(),
                CustodyRules.isLost(steps, now),
                head.isDestroyed(),
                CustodyRules.isOnHold(steps),
                offer(head),
                CustodyRules.gaps(steps, limits.gap(), now),
                CustodyRules.lateEntries(steps),
                CustodyRules.excursions(steps, temperatures(label.code())),
                CustodyRules.sealMismatches(steps),
                discrepancies.list(true, null, null, label.code(), 100),
                views(events, names));
        return mayFollowToTheLaboratory(acts.account()) ? whole : veiled(whole);
    }

    /** Where tissue goes after its first laboratory tells what was found there; that is for those who may know. */
    private static boolean mayFollowToTheLaboratory(Account account) {
        return account.may(Act.DERIVED_OUTCOME);
    }

    private static CustodyView veiled(CustodyView whole) {
        Optional<CustodyEventView> received = whole.events().stream()
                .filter(event -> event.kind().equals(CustodyKind.RECEIVED.name()))
                .findFirst();
        if (received.isEmpty()) {
            return whole;
        }
        CustodyEventView arrival = received.get();
        return new CustodyView(
                whole.code(),
                whole.part(),
                whole.kit(),
                arrival.custodian(),
                Holder.PARTY,
                arrival.custodianName(),
                arrival.place(),
                arrival.placeName(),
                arrival.occurredAt(),
                whole.verified(),
                whole.differences(),
                whole.collectedAt(),
                whole.hoursSinceCollection(),
                null,
                whole.lost(),
                whole.destroyed(),
                false,
                null,
                whole.gaps(),
                whole.lateEntries().stream()
                        .filter(late -> late.sequence() <= arrival.sequence())
                        .toList(),
                whole.excursions(),
                whole.sealMismatches(),
                whole.discrepancies(),
                whole.events().stream()
                        .map(event -> event.sequence() > arrival.sequence() ? event.veiled() : event)
                        .toList());
    }

    private CustodyView.Offer offer(Head head) {
        if (head.offered() == null) {
            return null;
        }
        HandOverView offer = handOvers.view(head.offered());
        return new CustodyView.Offer(offer.id(), offer.to(), offer.toName(), offer.occurredAt(), offer.overdue());
    }

    /** Limits by how the specimen was kept at a moment; a box has none. */
    private Function<Instant, Limits.Temperatures> temperatures(String code) {
        List<CustodyQueries.PreservationRow> kept = queries.preservations(code);
        PlanSettings settings = plan.settings();
        Map<String, Limits.Temperatures> limits = Map.of(
                "FRESH_CHILLED",
                new Limits.Temperatures(
                        celsius(settings, PlanSetting.CHILLED_LOWEST_CELSIUS),
                        celsius(settings, PlanSetting.CHILLED_HIGHEST_CELSIUS)),
                "FROZEN",
                new Limits.Temperatures(null, celsius(settings, PlanSetting.FROZEN_HIGHEST_CELSIUS)),
                "FORMALIN",
                new Limits.Temperatures(celsius(settings, PlanSetting.FORMALIN_LOWEST_CELSIUS), null));
        return at -> {
            String preservation = null;
            for (CustodyQueries.PreservationRow row : kept) {
                if (preservation == null || !row.since().isAfter(at)) {
                    preservation = row.preservation();
                }
            }
            return preservation == null
                    ? Limits.Temperatures.ANY
                    : limits.getOrDefault(preservation, Limits.Temperatures.ANY);
        };
    }

    private static BigDecimal celsius(PlanSettings settings, PlanSetting setting) {
        return BigDecimal.valueOf(settings.wholeNumber(setting, null, null, null));
    }

    private Map<String, String> names(List<RecordedEvent> events, Head head) {
        TreeSet<String> codes = new TreeSet<>();
        add(codes, head.holder().code(), head.place());
        events.forEach(event -> add(
                codes, event.text("actor"), event.text("counterparty"), event.text("place"), event.field("custodian")));
        return queries.names(codes);
    }

    private static void add(TreeSet<String> codes, String... some) {
        for (String code : some) {
            if (code != null) {
                codes.add(code);
            }
        }
    }

    private static String name(Map<String, String> names, String code) {
        return code == null
                ? null
                : names.getOrDefault(code, code.equals(CustodyService.CARRIER) ? "the carrier" : code);
    }

    private List<CustodyEventView> views(List<RecordedEvent> events, Map<String, String> names) {
        Map<UUID, Map<String, Redacted>> texts =
                ledger.secrets(events.stream().map(event -> event.event().id()).toList());
        Map<String, Integer> positions = new HashMap<>();
        Map<String, Integer> corrections = new HashMap<>();
        events.forEach(event -> {
            positions.put(event.event().id().toString(), event.event().sequence());
            if (event.field("corrects") != null) {
                corrections.put(event.field("corrects"), event.event().sequence());
            }
        });
        List<CustodyEventView> views = new ArrayList<>();
        for (RecordedEvent event : events) {
            Map<String, Redacted> kept = texts.getOrDefault(event.event().id(), Map.of());
            views.add(view(event, names, kept, positions, corrections));
        }
        return views;
    }

    private static CustodyEventView view(
            RecordedEvent event,
            Map<String, String> names,
            Map<String, Redacted> kept,
            Map<String, Integer> positions,
            Map<String, Integer> corrections) {
        Step step = event.step();
        String place = event.text("place") == null ? text(kept, "placeText") : event.text("place");
        return new CustodyEventView(
                step.sequence(),
                step.id(),
                step.kind().name(),
                step.kind().words(),
                step.occurredAt(),
                step.enteredAt(),
                event.time("receivedAt"),
                event.text("zone"),
                step.actor(),
                name(names, step.actor()),
                event.text("counterparty"),
                name(names, event.text("counterparty")),
                place,
                name(names, place),
                event.field("custodian"),
                name(names, event.field("custodian")),
                step.relinquishedAt(),
                step.late(),
                text(kept, "reason"),
                step.temperatureCelsius(),
                event.field("sensor"),
                step.tamperSeal(),
                event.field("condition"),
                event.field("box"),
                event.field("child") == null ? event.field("parent") : event.field("child"),
                text(kept, "carrier"),
                text(kept, "waybill"),
                text(kept, "signedBy"),
                event.field("paperForm"),
                text(kept, "evidence"),
                event.field("discrepancyKind"),
                event.field("outcome"),
                event.field("corrects") == null ? null : positions.get(event.field("corrects")),
                corrections.get(step.id().toString()),
                event.text("handOver") == null ? null : UUID.fromString(event.text("handOver")),
                event.event().hash(),
                event.event().predecessor());
    }

    private static String text(Map<String, Redacted> kept, String name) {
        return kept.containsKey(name) ? kept.get(name).text() : null;
    }
}
