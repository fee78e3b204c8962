package org.dentary.story.dossier;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.custody.CustodyService;
import org.dentary.custody.CustodyView;
import org.dentary.custody.event.CustodyEventView;
import org.dentary.kit.chain.LabelEvent;
import org.dentary.kit.chain.LabelHistory;
import org.dentary.kit.chain.LabelHistoryService;
import org.dentary.ledger.CheckpointService;
import org.dentary.ledger.InclusionProof;
import org.dentary.ledger.LedgerEvent;
import org.dentary.ledger.LedgerStore;
import org.dentary.ledger.Seal;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;

/** Gathers dossiers as far as the account at hand may know: the custody room leaves out what a laboratory did. */
@ApplicationScoped
public class DossierService {
    private final DossierQueries queries;
    private final CustodyService custody;
    private final CheckpointService checkpoints;
    private final LedgerStore ledger;
    private final LabelHistoryService histories;

    DossierService(
            DossierQueries queries,
            CustodyService custody,
            CheckpointService checkpoints,
            LedgerStore ledger,
            LabelHistoryService histories) {
        this.queries = queries;
        this.custody = custody;
        this.checkpoints = checkpoints;
        this.ledger = ledger;
        this.histories = histories;
    }

    /**
     * The dossier of a label as it stands; what no checkpoint seals yet has no proof.
     *
     * @throws InvalidInput if it is no code
     * @throws NotFound if it is no label of ours, or nothing was collected under it yet
     */
    public Dossier dossier(String typed) {
        CustodyView chain = custody.chain(typed);
        return of(List.of(chain)).get(0);
    }

    /** The same after everything recorded is sealed, so that the last event has its proof: for paper. */
    public Dossier sealed(String typed) {
        custody.chain(typed);
        checkpoints.sealAll();
        return dossier(typed);
    }

    /**
     * Dossiers of codes, in as many statements as for one; see to it that all is sealed.
     *
     * @return in the order given; codes without a chain are left out
     */
    List<Dossier> dossiers(List<String> codes) {
        return of(custody.chains(codes));
    }

    private List<Dossier> of(List<CustodyView> chains) {
        List<String> codes = chains.stream().map(CustodyView::code).toList();
        Map<String, Identity> identities =
                queries.identities(codes).stream().collect(Collectors.toMap(Identity::code, Function.identity()));
        Map<String, List<Dossier.Preservation>> preservations = byCode(queries.preservations(codes), p -> p.code());
        Map<String, List<Dossier.ReAttribution>> reAttributions = byCode(queries.reAttributions(codes), r -> r.of());
        Map<String, List<Dossier.Correction>> corrections = byCode(queries.corrections(codes), c -> c.code());
        Map<String, LabelHistory> labels = histories.of(codes);
        Map<UUID, Seal> seals = checkpoints.seals(Stream.concat(
                        chains.stream()
                                .flatMap(chain -> chain.events().stream())
                                .map(CustodyEventView::id),
                        labels.values().stream()
                                .flatMap(label -> label.events().stream())
                                .map(LabelEvent::id))
                .toList());
        List<LedgerEvent> last = ledger.chains(codes).values().stream()
                .map(events -> events.get(events.size() - 1))
                .toList();
        Map<UUID, InclusionProof> proofs = checkpoints.proofs(last);
        List<Dossier> dossiers = new ArrayList<>();
        for (CustodyView chain : chains) {
            String code = chain.code();
            List<CustodyEventView> events = chain.events();
            dossiers.add(new Dossier(
                    identities.get(code),
                    chain,
                    labels.get(code),
                    preservations.getOrDefault(code, List.of()),
                    reAttributions.getOrDefault(code, List.of()),
                    corrections.getOrDefault(code, List.of()),
                    sealsOf(events, labels.get(code), seals),
                    events.isEmpty()
                            ? null
                            : proofs.get(events.get(events.size() - 1).id())));
        }
        return dossiers;
    }

    private static Map<UUID, Seal> sealsOf(List<CustodyEventView> events, LabelHistory label, Map<UUID, Seal> seals) {
        return Stream.concat(
                        events.stream().map(CustodyEventView::id),
                        label.events().stream().map(LabelEvent::id))
                .filter(seals::containsKey)
                .collect(Collectors.toMap(Function.identity(), seals::get));
    }

    private static <T> Map<String, List<T>> byCode(List<T> rows, Function<T, String> code) {
        return rows.stream().collect(Collectors.groupingBy(code));
    }
}
