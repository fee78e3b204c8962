package org.dentary.custody.evidence;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.custody.chain.ChainWriter;
import org.dentary.custody.chain.Planned;

/** Appends the entries of one act with the digests of the photographs that show it. */
@ApplicationScoped
public class EvidenceWriter {
    private final ChainWriter chains;
    private final EvidenceService evidence;

    EvidenceWriter(ChainWriter chains, EvidenceService evidence) {
        this.chains = chains;
        this.evidence = evidence;
    }

    /**
     * Appends in the caller's transaction.
     *
     * @param photos kept before by the account at hand; null or empty for none
     * @throws org.dentary.platform.problem.InvalidInput for more than {@link EvidenceService#MOST_PHOTOS}, or for one that
     *     was not kept by the account at hand
     */
    public void append(List<Planned> planned, List<UUID> photos) {
        List<Map<String, String>> digests = evidence.digests(photos);
        if (digests.isEmpty()) {
            chains.append(planned);
            return;
        }
        chains.append(planned.stream()
                .map(plan -> new Planned(plan.draft().with("evidencePhotos", digests), plan.next()))
                .toList());
        evidence.show(planned.stream().map(plan -> plan.draft().id()).toList(), photos);
    }
}
