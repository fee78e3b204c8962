package org.dentary.story.dossier;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.OutputStream;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.function.Consumer;
import org.dentary.ledger.CheckpointService;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.platform.problem.InvalidInput;

/** Draws audit samples and prints their dossiers, a score of them in memory at a time. */
@ApplicationScoped
public class AuditSampleService {
    private static final int AT_A_TIME = 20;
    private static final SecureRandom RANDOM = new SecureRandom();

    private final DossierQueries queries;
    private final DossierService dossiers;
    private final DossierPrinter printer;
    private final CheckpointService checkpoints;
    private final PlanService plan;
    private final Clock clock;

    AuditSampleService(
            DossierQueries queries,
            DossierService dossiers,
            DossierPrinter printer,
            CheckpointService checkpoints,
            PlanService plan,
            Clock clock) {
        this.queries = queries;
        this.dossiers = dossiers;
        this.printer = printer;
        this.checkpoints = checkpoints;
        this.plan = plan;
        this.clock = clock;
    }

    /**
     * Draws specimens of a season.
     *
     * @param size 1 to 500, as typed
     * @param seed null or blank: a fresh one
     * @throws InvalidInput for another size or a faulty seed
     * @throws org.dentary.platform.problem.NotFound if there is no such season
     */
    public AuditSample draw(String season, String size, String seed) {
        if (season == null || season.isBlank()) {
            throw InvalidInput.field("season", "REQUIRED", "choose the season to draw from");
        }
        SeasonView from = plan.season(season.strip());
        int many = SampleRules.requireSize(size);
        String with = seed == null || seed.isBlank() ? fresh() : SampleRules.requireSeed(seed.strip());
        List<String> population = queries.ofSeason(from.code());
        return new AuditSample(
                from.code(),
                from.name(),
                with,
                many,
                population.size(),
                SampleRules.digest(population),
                clock.instant(),
                SampleRules.draw(population, with, many));
    }

    /** The specimens of a sample with what is wrong with each, in the order drawn. */
    public List<AuditSample.Item> items(AuditSample sample) {
        List<AuditSample.Item> items = new ArrayList<>();
        each(sample, dossier -> items.add(AuditSample.Item.of(dossier)));
        return items;
    }

    /** Seals what is recorded, then prints how the sample was drawn and every dossier; the stream stays open. */
    void print(AuditSample sample, OutputStream out) {
        checkpoints.sealAll();
        printer.sample(sample, out, draw -> each(sample, draw));
    }

    private void each(AuditSample sample, Consumer<Dossier> use) {
        for (int from = 0; from < sample.codes().size(); from += AT_A_TIME) {
            int to = Math.min(from + AT_A_TIME, sample.codes().size());
            dossiers.dossiers(sample.codes().subList(from, to)).forEach(use);
        }
    }

    private static String fresh() {
        byte[] bytes = new byte[6];
        RANDOM.nextBytes(bytes);
        return HexFormat.of().formatHex(bytes);
    }
}
