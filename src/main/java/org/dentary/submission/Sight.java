package org.dentary.submission;

import java.util.List;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.Role;

/**
 * What an account sees of submissions. Who may not know derived outcomes sees nothing of where an animal's tissue went
 * from the moment its finding was withheld: a second laboratory would tell what the first one found. A sampler sees what
 * came from the stations that the account serves.
 *
 * @param knowing whether derived outcomes may be known
 * @param everywhere whether all stations are seen
 * @param stations station codes, where not all are seen
 */
record Sight(boolean knowing, boolean everywhere, List<String> stations) {
    static Sight of(Account account) {
        return new Sight(
                account.may(Act.DERIVED_OUTCOME),
                account.role() != Role.SAMPLER || account.stations().contains("*"),
                account.stations());
    }
}
