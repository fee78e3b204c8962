package org.dentary.prevalence.truth;

import static org.hamcrest.Matchers.equalTo;

import io.restassured.path.json.JsonPath;
import io.restassured.path.json.config.JsonPathConfig;
import io.restassured.response.ValidatableResponse;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.dentary.SeasonFixture;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.dentary.prevalence.comparison.ClassFixture;

/** Animals with the findings that their outcomes rest on, and sets of test performance. */
@ApplicationScoped
public class TruthFixture {
    public static final String NODE = "MEDIAL_RETROPHARYNGEAL_NODE";
    public static final String HEAD =
            "code,name,disease,species,methods,tissues,kind,reference,sensitivity,specificity,"
                    + "infected,detected_of_infected,uninfected,not_detected_of_uninfected,population,source,source_seen,as_of\n";
    private static final AtomicInteger SETS = new AtomicInteger();

    private final EntityManager entities;
    private final LineFixture lines;
    private final ClassFixture classes;
    private final SeasonFixture seasons;

    TruthFixture(EntityManager entities, LineFixture lines, ClassFixture classes, SeasonFixture seasons) {
        this.entities = entities;
        this.lines = lines;
        this.classes = classes;
        this.seasons = seasons;
    }

    /** A code of a set that no other test has. */
    public String code() {
        return "TP_" + SETS.incrementAndGet() + "_"
                + UUID.randomUUID().toString().substring(0, 6).toUpperCase(java.util.Locale.ROOT);
    }

    /** A row of the set-up list as people write it; screening and confirmation on the node, white-tailed deer. */
    public static String row(String code, String kind, String figures) {
        return code + ",Test set," + SeasonFixture.DISEASE + "," + SeasonFixture.SPECIES + ",T_SCREEN T_CONFIRM," + NODE
                + "," + kind + ",necropsy," + figures + ",deer of a test,\"Nobody 2026, table 1\",READ,2026-01-02\n";
    }

    /** A set with fractions taken as known; returns its code. */
    public String stated(String sensitivity, String specificity) {
        return imported("ANIMAL_LEVEL", sensitivity + "," + specificity + ",,,,");
    }

    /** A set with a study's counts; returns its code. */
    public String studied(int detectedOfInfected, int infected, int notDetectedOfUninfected, int uninfected) {
        return imported(
                "ANIMAL_LEVEL",
                ",," + infected + "," + detectedOfInfected + "," + uninfected + "," + notDetectedOfUninfected);
    }

    /** Imports a set as the coordinator does; returns its code. */
    public String imported(String kind, String figures) {
        String code = code();
        classes.post("test-performance", HEAD + row(code, kind, figures)).statusCode(200);
        return code;
    }

    /** A season of its own with {@code detected} of {@code counted} adult males, all screened on the node. */
    public String season(int detected, int counted) {
        seasons.ensure();
        String season = lines.season();
        add(season, "ADULT", "MALE", detected, counted);
        return season;
    }

    /** Adds animals of a class, all screened on the node and the detected ones confirmed there. */
    public void add(String season, String age, String sex, int detected, int counted) {
        if (detected > 0) {
            List<String> kits = lines.add(season, detected, ALine.of(age, sex, "DETECTED"));
            tested(kits, "N1", NODE, "T_SCREEN", "SCREENING", "SUSPECT", false);
            found(kits, "N1", "T_CONFIRM", "CONFIRMATORY", "DETECTED", false);
        }
        if (counted > detected) {
            tested(
                    lines.add(season, counted - detected, ALine.of(age, sex, "NOT_DETECTED")),
                    "N1",
                    NODE,
                    "T_SCREEN",
                    "SCREENING",
                    "NOT_DETECTED",
                    false);
        }
    }

    /** Takes tissue under the label that ends so, and reports a final finding on it. */
    @Transactional
    public void tested(
            List<String> kits, String label, String tissue, String method, String stage, String word, boolean pool) {
        for (String sql : List.of(
                "insert into label (code, part, kit_printed, kit_bound) select kit || :label, 'NODES', kit, kit"
                        + " from unnest(:kits) kit on conflict do nothing",
                """
                insert into specimen (code, tissue, side, condition, preservation, collected_at, collected_by, recorded_by,
                       recorded_at)
                select kit || :label, '%s', 'BOTH', 'GOOD', 'FROZEN', now(), 'test', 'test', now()
                  from unnest(:kits) kit on conflict do nothing
                """.formatted(tissue))) {
            entities.createNativeQuery(sql)
                    .setParameter("kits", kits.toArray(String[]::new))
                    .setParameter("label", label)
                    .executeUpdate();
        }
        found(kits, label, method, stage, word, pool);
    }

    /** Another final finding on tissue that is there. */
    @Transactional
    public void found(List<String> kits, String label, String method, String stage, String word, boolean pool) {
        String salt = UUID.randomUUID().toString();
        for (String sql : List.of("""
                insert into finding (id, method, disease, stage, finding, status, laboratory, accession, item, tested_on,
                       reported_on, pool, recorded_by, recorded_at)
                select cast(md5(kit || :salt) as uuid), '%s', 'CWD', '%s', '%s', 'FINAL', 'T_LAB', kit || :label, '1',
                       date '2026-01-02', date '2026-01-03', %s, 'test', now()
                  from unnest(:kits) kit
                """.formatted(method, stage, word, pool), """
                insert into finding_specimen (finding, code)
                select cast(md5(kit || :salt) as uuid), kit || :label from unnest(:kits) kit
                """)) {
            entities.createNativeQuery(sql)
                    .setParameter("kits", kits.toArray(String[]::new))
                    .setParameter("label", label)
                    .setParameter("salt", salt)
                    .executeUpdate();
        }
    }

    static JsonPath asked(String season, String set, String more) {
        return doubles(ok("/api/v1/true-prevalence?season=" + season + "&performance=" + set + more)
                .extract()
                .asString());
    }

    static JsonPath doubles(String json) {
        return JsonPath.from(json).using(new JsonPathConfig(JsonPathConfig.NumberReturnType.DOUBLE));
    }

    static ValidatableResponse ok(String address) {
        return ClassFixture.as("epidemiologist")
                .get(address)
                .then()
                .statusCode(200)
                .header("Cache-Control", equalTo("private, no-store"));
    }

    static String csv(String address) {
        return ClassFixture.as("epidemiologist")
                .accept("text/csv")
                .get(address)
                .then()
                .statusCode(200)
                .extract()
                .asString();
    }
}
