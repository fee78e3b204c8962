package org.dentary.custody.handover;

import java.util.List;

/**
 * Whom an account acts for beside itself.
 *
 * @param actor its own opaque id
 * @param stores codes of the stores that it may use
 * @param anyParty whether it acts for every organisation
 * @param organisation code of the one that it belongs to; empty for none
 */
public record ActingFor(String actor, List<String> stores, boolean anyParty, String organisation) {
    public ActingFor {
        stores = List.copyOf(stores);
    }
}
