package org.dentary.kit.chain;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.ledger.Chain;
import org.dentary.ledger.ChainHead;
import org.dentary.ledger.Difference;
import org.dentary.ledger.LedgerEvent;
import org.dentary.ledger.LedgerStore;
import org.dentary.ledger.Redacted;

/** Reads what happened to labels as labels, each block's chain and list of codes checked. */
@ApplicationScoped
public class LabelHistoryService {
    private final BlockChainQueries queries;
    private final LedgerStore ledger;

    LabelHistoryService(BlockChainQueries queries, LedgerStore ledger) {
        this.queries = queries;
        this.ledger = ledger;
    }

    /** What the labels at hand have in common. */
    private record Known(
            Map<String, List<LedgerEvent>> chains,
            Map<String, List<String>> differences,
            Map<UUID, Map<String, Redacted>> texts,
            Map<String, String> names) {}

    /**
     * The histories of labels, in as many statements as for one.
     *
     * @param codes label codes as kept
     * @return by code; what is no label of ours is left out
     */
    public Map<String, LabelHistory> of(Collection<String> codes) {
        List<BlockChainQueries.Home> homes = codes.isEmpty() ? List.of() : queries.homes(codes);
        if (homes.isEmpty()) {
            return Map.of();
        }
        List<String> blocks =
                homes.stream().map(BlockChainQueries.Home::block).distinct().toList();
        Map<String, List<LedgerEvent>> chains = ledger.chains(blocks);
        Map<String, BlockChainQueries.Codes> digests = queries.codes(blocks);
        Map<String, List<String>> differences = new HashMap<>();
        TreeSet<String> people = new TreeSet<>();
        Map<UUID, Map<String, Redacted>> texts = ledger.secrets(chains.values().stream()
                .flatMap(List::stream)
                .map(LedgerEvent::id)
                .toList());
        chains.forEach((block, events) -> {
            differences.put(block, differences(events, texts, digests.get(block)));
            events.forEach(event -> {
                for (String of : List.of("actor", "place", "counterparty")) {
                    people.add(event.content().path(of).asText());
                }
            });
        });
        Known known = new Known(chains, differences, texts, queries.names(people));
        return homes.stream().collect(Collectors.toMap(BlockChainQueries.Home::code, home -> history(home, known)));
    }

    private static List<String> differences(
            List<LedgerEvent> events, Map<UUID, Map<String, Redacted>> texts, BlockChainQueries.Codes codes) {
        List<String> differences = new ArrayList<>(Stream.concat(
                        Chain.verify(events, ChainHead.after(events.get(events.size() - 1))).stream(),
                        Chain.verifyOutside(events, texts).stream())
                .map(Difference::toString)
                .toList());
        JsonNode issue = events.get(0).content();
        String expected = issue.path("fields").path("codesSha256").asText(null);
        if (expected != null && (codes == null || !expected.equals(codes.sha256()))) {
            differences.add("the codes of block " + events.get(0).chain()
                    + " are not those that were issued: expected digest " + expected + ", found "
                    + (codes == null ? "no codes" : codes.sha256()));
        }
        return differences;
    }

    private static LabelHistory history(BlockChainQueries.Home home, Known known) {
        List<LabelEvent> events = known.chains().getOrDefault(home.block(), List.of()).stream()
                .filter(event -> isOf(home.code(), event.content()))
                .map(event -> view(event, known))
                .toList();
        List<String> differences = known.differences().getOrDefault(home.block(), List.of());
        return new LabelHistory(home.code(), UUID.fromString(home.block()), differences.isEmpty(), differences, events);
    }

    private static boolean isOf(String code, JsonNode content) {
        String label = content.path("fields").path("label").asText(null);
        return label == null || label.equals(code);
    }

    private static LabelEvent view(LedgerEvent event, Known known) {
        JsonNode content = event.content();
        JsonNode fields = content.path("fields");
        LabelEventKind kind = LabelEventKind.valueOf(event.kind());
        Redacted reason = known.texts().getOrDefault(event.id(), Map.of()).get("reason");
        boolean asRecorded = reason != null && reason.digest().equals(event.digest("reason"));
        String place = content.path("place").asText(null);
        String person = content.path("counterparty").asText(null);
        String actor = content.path("actor").asText();
        return new LabelEvent(
                event.sequence(),
                event.id(),
                kind,
                kind.words(),
                Instant.parse(content.path("occurredAt").asText()),
                content.path("zone").asText(),
                known.names().getOrDefault(actor, actor),
                place,
                place == null ? null : known.names().getOrDefault(place, place),
                person == null ? null : known.names().getOrDefault(person, person),
                fields.hasNonNull("labels") ? fields.get("labels").asInt() : null,
                asRecorded ? reason.text() : null,
                fields.hasNonNull("printNumber") ? fields.get("printNumber").asInt() : null,
                event.hash());
    }
}
