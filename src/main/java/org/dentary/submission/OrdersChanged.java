package org.dentary.submission;

import java.util.Collection;
import java.util.Set;

/**
 * Told inside the transaction in which tests ordered on specimens changed, so that outcomes can be derived anew.
 *
 * @param codes the specimens
 */
public record OrdersChanged(Set<String> codes) {
    public OrdersChanged {
        codes = Set.copyOf(codes);
    }

    OrdersChanged(Collection<String> codes) {
        this(Set.copyOf(codes));
    }
}
