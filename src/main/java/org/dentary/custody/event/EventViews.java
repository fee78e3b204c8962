package org.dentary.custody.event;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.UnaryOperator;
import org.dentary.custody.chain.CustodyKind;
import org.dentary.custody.chain.CustodyRules;
import org.dentary.custody.chain.RecordedEvent;
import org.dentary.custody.chain.Step;
import org.dentary.custody.evidence.ErasedText;
import org.dentary.custody.evidence.EvidenceView;
import org.dentary.ledger.Redacted;

/** Shows the events of one chain: everybody by name, free texts where they are not erased, corrections both ways. */
public final class EventViews {
    private EventViews() {}

    /**
     * The events as people read them, in the order of recording.
     *
     * @param name what people call a code; null of null
     * @param photos photographs by event
     * @param erasures what was erased, by event
     * @param texts what was redacted and is not erased, by event and field
     */
    public static List<CustodyEventView> of(
            List<RecordedEvent> events,
            UnaryOperator<String> name,
            Map<UUID, Map<String, Redacted>> texts,
            Map<UUID, List<EvidenceView>> photos,
            Map<UUID, List<ErasedText>> erasures) {
        Map<String, Integer> positions = new HashMap<>();
        Map<String, Integer> corrections = new HashMap<>();
        events.forEach(event -> {
            positions.put(event.event().id().toString(), event.event().sequence());
            if (event.field("corrects") != null) {
                corrections.put(event.field("corrects"), event.event().sequence());
            }
        });
        Map<Integer, String> seals = sealsBefore(events);
        List<CustodyEventView> views = new ArrayList<>();
        for (RecordedEvent event : events) {
            Map<String, Redacted> kept = texts.getOrDefault(event.event().id(), Map.of());
            views.add(view(
                    event,
                    name,
                    kept,
                    positions,
                    corrections,
                    seals,
                    photos.getOrDefault(event.event().id(), List.of()),
                    erasures.getOrDefault(event.event().id(), List.of())));
        }
        return views;
    }

    private static CustodyEventView view(
            RecordedEvent event,
            UnaryOperator<String> name,
            Map<String, Redacted> kept,
            Map<String, Integer> positions,
            Map<String, Integer> corrections,
            Map<Integer, String> seals,
            List<EvidenceView> photos,
            List<ErasedText> erasures) {
        Step step = event.step();
        String place = event.text("place") == null ? text(event, kept, "placeText") : event.text("place");
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
                name.apply(step.actor()),
                event.text("counterparty"),
                name.apply(event.text("counterparty")),
                place,
                name.apply(place),
                event.field("from"),
                name.apply(event.field("from")),
                event.field("custodian"),
                name.apply(event.field("custodian")),
                step.relinquishedAt(),
                step.late(),
                text(event, kept, "reason"),
                step.temperatureCelsius(),
                event.field("sensor"),
                seals.get(step.sequence()),
                step.tamperSeal(),
                event.field("condition"),
                event.field("box"),
                event.field("child") == null ? event.field("parent") : event.field("child"),
                text(event, kept, "carrier"),
                text(event, kept, "waybill"),
                text(event, kept, "signedBy"),
                text(event, kept, "signature"),
                event.field("paperForm"),
                text(event, kept, "evidence"),
                event.field("discrepancyKind"),
                event.field("outcome"),
                event.field("corrects") == null ? null : positions.get(event.field("corrects")),
                corrections.get(step.id().toString()),
                event.text("handOver") == null ? null : UUID.fromString(event.text("handOver")),
                photos.stream().filter(photo -> event.shows(photo.sha256())).toList(),
                erasures,
                event.event().hash(),
                event.event().predecessor());
    }

    /** The seal that was on when a seal was put on or checked, by position; nothing where there was none. */
    private static Map<Integer, String> sealsBefore(List<RecordedEvent> events) {
        Map<Integer, String> before = new HashMap<>();
        List<Step> asItHappened = events.stream()
                .map(RecordedEvent::step)
                .sorted(Comparator.comparing(Step::occurredAt).thenComparing(Step::sequence))
                .toList();
        List<Step> earlier = new ArrayList<>();
        for (Step step : asItHappened) {
            if (step.kind() == CustodyKind.TAMPER_SEAL_APPLIED || step.kind() == CustodyKind.TAMPER_SEAL_CHECKED) {
                before.put(step.sequence(), CustodyRules.sealAt(earlier, Instant.MAX));
            }
            earlier.add(step);
        }
        return before;
    }

    /** A text that is kept outside; null where there is none, or it is not the one that was recorded. */
    private static String text(RecordedEvent event, Map<String, Redacted> kept, String name) {
        Redacted text = kept.get(name);
        return text != null && text.digest().equals(event.digest(name)) ? text.text() : null;
    }
}
