package org.dentary.result.outcome;

import java.util.List;

/** Animals whose outcome was just derived as suspect or detected, for whoever must act before anything is released. */
public record SuspicionDerived(List<Suspicion> suspicions) {
    /** One animal, by the kit that counts, and the disease. */
    public record Suspicion(String kit, String disease) {}

    public SuspicionDerived {
        suspicions = List.copyOf(suspicions);
    }
}
