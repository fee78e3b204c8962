package org.dentary.story.dossier;

import java.time.Instant;
import java.util.List;

/**
 * Specimens drawn at random from a season.
 *
 * @param season code of the season
 * @param seasonName its name
 * @param seed what the draw was made with; the same seed draws the same from the same population
 * @param size how many were asked for
 * @param population how many specimens in custody the season's animals have
 * @param populationDigest SHA-256 of their sorted codes, a line each: differs once a specimen came in or was put right
 * @param drawnAt when
 * @param codes in the order drawn; all of the population where it is smaller than size
 */
public record AuditSample(
        String season,
        String seasonName,
        String seed,
        int size,
        int population,
        String populationDigest,
        Instant drawnAt,
        List<String> codes) {

    /**
     * One specimen of a sample.
     *
     * @param entries how many events its chain has
     * @param concerns what is wrong, one sentence each
     */
    public record Item(
            String code,
            String kit,
            String tissue,
            String side,
            String station,
            String custodian,
            int entries,
            List<String> concerns) {
        public Item {
            concerns = List.copyOf(concerns);
        }

        static Item of(Dossier dossier) {
            Identity identity = dossier.identity();
            return new Item(
                    identity.code(),
                    identity.kitBound(),
                    identity.tissue(),
                    identity.side(),
                    identity.station(),
                    dossier.custody().custodianName(),
                    dossier.custody().events().size(),
                    dossier.concerns());
        }
    }

    public AuditSample {
        codes = List.copyOf(codes);
    }

    /** Where it is drawn again: everything it depends on as a query. */
    public String query() {
        return "season=" + java.net.URLEncoder.encode(season, java.nio.charset.StandardCharsets.UTF_8) + "&size=" + size
                + "&seed=" + seed;
    }

    /** Where its table is as CSV. */
    public String csv() {
        return "/api/v1/custody/audit-sample.csv?" + query();
    }

    /** Where its dossiers are as one PDF. */
    public String pdf() {
        return "/api/v1/custody/audit-sample.pdf?" + query();
    }
}
