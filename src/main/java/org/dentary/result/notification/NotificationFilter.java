package org.dentary.result.notification;

import java.util.List;
import org.dentary.platform.problem.InvalidInput;

/**
 * What part of the work list; empty text leaves a part open.
 *
 * @param state {@code OPEN} for all that is to be done, or one state
 */
record NotificationFilter(String state, String season, String disease) {
    static final List<String> STATES = List.of("OPEN", "DUE", "TELL_AGAIN", "NO_CONTACT", "HELD", "TOLD", "CLOSED");

    NotificationFilter {
        state = state == null ? "" : state.strip();
        season = season == null ? "" : season.strip();
        disease = disease == null ? "" : disease.strip();
        if (!state.isEmpty() && !STATES.contains(state)) {
            throw InvalidInput.field(
                    "state", "NOT_A_VALUE", "'" + state + "' is no state; one of " + String.join(", ", STATES));
        }
    }
}
