package org.dentary.plan;

import java.util.List;

/**
 * A way of testing tissue.
 *
 * @param disease code of the disease it looks for
 * @param acceptedTissues tissues on which its word counts, in set-up order
 */
public record TestMethodView(String code, String name, String disease, List<String> acceptedTissues) {
    public TestMethodView {
        acceptedTissues = List.copyOf(acceptedTissues);
    }
}
