package org.dentary.kit;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.account.Role;

/** Fresh kits for tests. */
@ApplicationScoped
public class KitFixture {
    private final BlockService blocks;
    private final SeasonFixture season;
    private final CurrentAccount current;

    KitFixture(BlockService blocks, SeasonFixture season, CurrentAccount current) {
        this.blocks = blocks;
        this.season = season;
        this.current = current;
    }

    /** A new block of the test season at {@link SeasonFixture#STATION}. */
    @ActivateRequestContext
    public IssuedBlock aBlock(int kits, Part... parts) {
        return aBlockAt(SeasonFixture.STATION, kits, parts);
    }

    /** A new block of the test season at a station. */
    @ActivateRequestContext
    public IssuedBlock aBlockAt(String station, int kits, Part... parts) {
        season.ensure();
        current.become(new Account("coordinator", "T_COORDINATOR", Role.COORDINATOR, List.of("*")));
        UUID id = UUID.randomUUID();
        blocks.issue(
                id,
                new IssueBlock(
                        SeasonFixture.SEASON,
                        station,
                        null,
                        kits,
                        Stream.of(parts).toList(),
                        null),
                null);
        return blocks.contents(id);
    }

    /** One new kit with these labels, in the order given. */
    @ActivateRequestContext
    public List<LabelOfKit> aKit(Part... parts) {
        return aBlock(1, parts).labels();
    }
}
