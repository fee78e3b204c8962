package org.dentary.custody;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.KitStem;
import org.dentary.codes.Minting;
import org.dentary.codes.Part;
import org.dentary.platform.account.AccountService;
import org.dentary.platform.account.CurrentAccount;

/** Fresh labels, and specimens collected by an account of the season's. */
@ApplicationScoped
public class CustodyFixture {
    private static final Minting MINTING = new Minting();

    private final EntityManager entities;
    private final SeasonFixture season;
    private final CustodyService custody;
    private final CurrentAccount current;
    private final AccountService accounts;

    CustodyFixture(
            EntityManager entities,
            SeasonFixture season,
            CustodyService custody,
            CurrentAccount current,
            AccountService accounts) {
        this.entities = entities;
        this.season = season;
        this.custody = custody;
        this.current = current;
        this.accounts = accounts;
    }

    /** One label of that part of each of as many fresh kits. */
    @Transactional
    public List<String> labels(int count, Part part) {
        season.ensure();
        UUID block = UUID.randomUUID();
        entities.createNativeQuery("insert into kit_block (id, season, station, parts, kits, issued_by, issued_at)"
                        + " values (:id, 'T2026', 'T_STATION_1', array['NODE_LEFT'], :kits, 'test', now())")
                .setParameter("id", block)
                .setParameter("kits", count)
                .executeUpdate();
        List<KitStem> kits = MINTING.mint(count);
        List<String> codes = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            String kit = kits.get(i).value();
            String code = kits.get(i).label(part).value();
            entities.createNativeQuery("insert into kit (code, block, position) values (:kit, :block, :position)")
                    .setParameter("kit", kit)
                    .setParameter("block", block)
                    .setParameter("position", i + 1)
                    .executeUpdate();
            entities.createNativeQuery("insert into label (code, part, kit_printed, kit_bound)"
                            + " values (:code, :part, :kit, :kit)")
                    .setParameter("code", code)
                    .setParameter("part", part.name())
                    .setParameter("kit", kit)
                    .executeUpdate();
            codes.add(code);
        }
        return codes;
    }

    public String aBoxLabel() {
        return labels(1, Part.BOX).get(0);
    }

    /** Specimens that the sampler collected then. */
    public List<String> collected(int count, Instant at) {
        List<String> codes = labels(count, Part.NODE_LEFT);
        as("sampler");
        custody.collected(codes.stream()
                .map(code -> new Collected(code, at, at, SeasonFixture.STATION, "GOOD"))
                .toList());
        return codes;
    }

    /** A specimen's row, kept in some way from then on. */
    @Transactional
    public void preserved(String code, String preservation, Instant since) {
        entities.createNativeQuery("insert into specimen (code, tissue, side, condition, preservation, collected_at,"
                        + " collected_by, recorded_by, recorded_at) values (:code, 'MEDIAL_RETROPHARYNGEAL_NODE', 'LEFT',"
                        + " 'GOOD', :preservation, :since, 'T_SAMPLER', 'T_SAMPLER', :since)")
                .setParameter("code", code)
                .setParameter("preservation", preservation)
                .setParameter("since", since)
                .executeUpdate();
        entities.createNativeQuery("insert into specimen_preservation (code, preservation, since, by_actor)"
                        + " values (:code, :preservation, :since, 'T_SAMPLER')")
                .setParameter("code", code)
                .setParameter("preservation", preservation)
                .setParameter("since", since)
                .executeUpdate();
    }

    /** Whatever the test does from here on, this account does. */
    public void as(String username) {
        current.become(accounts.find(username).orElseThrow());
    }
}
