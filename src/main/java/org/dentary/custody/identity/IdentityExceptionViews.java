package org.dentary.custody.identity;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.dentary.custody.chain.Answers;
import org.dentary.custody.evidence.ErasedText;
import org.dentary.custody.evidence.EvidenceService;
import org.dentary.custody.evidence.EvidenceView;
import org.dentary.custody.evidence.TextErasureService;
import org.dentary.ledger.LedgerStore;
import org.dentary.ledger.Redacted;
import org.dentary.platform.problem.NotFound;

/** Reads identity exceptions for people: everybody by name, with the texts and photographs of their entries. */
@ApplicationScoped
public class IdentityExceptionViews {
    private final IdentityExceptionQueries queries;
    private final LedgerStore ledger;
    private final EvidenceService evidence;
    private final TextErasureService erasures;

    IdentityExceptionViews(
            IdentityExceptionQueries queries,
            LedgerStore ledger,
            EvidenceService evidence,
            TextErasureService erasures) {
        this.queries = queries;
        this.ledger = ledger;
        this.evidence = evidence;
        this.erasures = erasures;
    }

    /**
     * The exception as it stands.
     *
     * @throws NotFound if there is none of that id
     */
    public IdentityExceptionView view(UUID id) {
        return views(queries.byId(id).stream().toList()).stream()
                .findFirst()
                .orElseThrow(() -> new NotFound(
                        "IDENTITY_EXCEPTION_UNKNOWN", "No identity exception " + id + " was ever asked for"));
    }

    /** Exceptions, the newest first. */
    List<IdentityExceptionView> list(IdentityExceptionQueries.Filter filter, int most) {
        return views(queries.list(filter, most));
    }

    /** Every exception to the last, the newest first. */
    public void all(Consumer<IdentityExceptionView> each) {
        Answers.whole(
                (after, most) -> list(new IdentityExceptionQueries.Filter(null, null, null, after), most),
                IdentityExceptionView::mark,
                each);
    }

    /** Those of one specimen's own, the oldest first. */
    List<IdentityExceptionView> of(String code) {
        return views(queries.ofCodes(List.of(code)));
    }

    /** Those of an animal's specimens, by the kit their labels are bound to today, the oldest first. */
    public List<IdentityExceptionView> ofAnimal(String kit) {
        List<String> codes = queries.ofAnimal(kit);
        return codes.isEmpty() ? List.of() : views(queries.ofCodes(codes));
    }

    /**
     * The exceptions that stand on each code's papers: its own and those of what it was cut from, the oldest first.
     *
     * @return by code; a code without any has no entry
     */
    public Map<String, List<IdentityExceptionView>> ofCodes(Collection<String> codes) {
        List<IdentityExceptionQueries.Kin> kin = codes.isEmpty() ? List.of() : queries.lineage(codes);
        if (kin.isEmpty()) {
            return Map.of();
        }
        Map<String, List<IdentityExceptionView>> byCode =
                views(queries.ofCodes(kin.stream()
                                .map(IdentityExceptionQueries.Kin::code)
                                .distinct()
                                .toList()))
                        .stream()
                        .collect(Collectors.groupingBy(IdentityExceptionView::code));
        Map<String, List<IdentityExceptionView>> all = new HashMap<>();
        kin.forEach(one -> all.computeIfAbsent(one.of(), code -> new ArrayList<>())
                .addAll(byCode.getOrDefault(one.code(), List.of())));
        return all;
    }

    /** With the texts of their entries and their photographs, however many in the same number of statements. */
    private List<IdentityExceptionView> views(List<IdentityExceptionQueries.Row> rows) {
        if (rows.isEmpty()) {
            return List.of();
        }
        List<UUID> events = new ArrayList<>();
        rows.forEach(row -> {
            events.add(UUID.fromString(row.event()));
            if (row.decisionEvent() != null) {
                events.add(UUID.fromString(row.decisionEvent()));
            }
        });
        Map<UUID, Map<String, Redacted>> texts = ledger.secrets(events);
        Map<UUID, List<EvidenceView>> photos = evidence.ofEvents(events);
        Map<UUID, List<ErasedText>> erased = erasures.ofEvents(events);
        return rows.stream()
                .map(row -> new IdentityExceptionView(
                        row.id(),
                        row.code(),
                        row.kit(),
                        row.zone(),
                        row.problem(),
                        text(texts, row.event(), "problemText"),
                        row.discrepancy(),
                        text(texts, row.event(), "reason"),
                        text(texts, row.event(), "evidence"),
                        row.state(),
                        row.askedBy(),
                        row.askedByName(),
                        row.askedAt(),
                        row.event(),
                        row.decidedBy(),
                        row.decidedByName(),
                        row.decidedAt(),
                        row.decisionEvent() == null ? null : text(texts, row.decisionEvent(), "reason"),
                        row.decisionEvent(),
                        photos.getOrDefault(UUID.fromString(row.event()), List.of()),
                        erased.getOrDefault(UUID.fromString(row.event()), List.of()),
                        row.decisionEvent() == null
                                ? List.of()
                                : erased.getOrDefault(UUID.fromString(row.decisionEvent()), List.of())))
                .toList();
    }

    private static String text(Map<UUID, Map<String, Redacted>> texts, String event, String name) {
        Redacted kept = texts.getOrDefault(UUID.fromString(event), Map.of()).get(name);
        return kept == null ? null : kept.text();
    }
}
