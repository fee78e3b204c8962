package org.dentary.custody.event;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.List;
import org.dentary.custody.chain.Labels;
import org.dentary.people.Custodian;
import org.dentary.people.PeopleService;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.InvalidInput;

/**
 * Who must stand by when tissue is destroyed. Two people are needed as long as a result of the animal is to come, something was detected
 * in it, or a label of it is in doubt; one is enough where every released word is final and nothing was detected. What was withheld
 * counts as a result to come, so that the need tells nobody anything. Common practice, no source; the laboratory's and the agency's
 * written rules of disposal stand above it.
 */
@ApplicationScoped
class Disposal {
    private final DisposalQueries queries;
    private final PeopleService people;
    private final CurrentAccount current;

    Disposal(DisposalQueries queries, PeopleService people, CurrentAccount current) {
        this.queries = queries;
        this.people = people;
        this.current = current;
    }

    /**
     * The witness's roster code; null where none was named and none is needed.
     *
     * @param typed a person's code or sign-in name, or nothing
     * @throws InvalidInput naming the codes that need a second person, or for a witness who is nobody or the one who records
     */
    String witness(String typed, Collection<String> codes) {
        if (typed == null || typed.isBlank()) {
            List<String> kept = queries.needingTwo(codes);
            if (!kept.isEmpty()) {
                throw InvalidInput.field(
                        "witness",
                        "WITNESS_REQUIRED",
                        "Name who stood by: a result is still to come, something was detected, or a label is in doubt for "
                                + Labels.shown(kept));
            }
            return null;
        }
        String given = typed.strip();
        Custodian person = people.custodians(List.of(given)).get(given);
        if (person == null || person.kind() != Custodian.Kind.PERSON) {
            throw InvalidInput.field(
                    "witness", "PERSON_UNKNOWN", "'" + given + "' is nobody on the roster and no sign-in name");
        }
        if (person.code().equals(current.get().actor())) {
            throw InvalidInput.field(
                    "witness", "WITNESS_IS_ACTOR", "You record it; who stood by is another person. Name them");
        }
        return person.code();
    }
}
