package org.dentary.prevalence.ageing;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.prevalence.comparison.ClassFixture;
import org.dentary.prevalence.comparison.ClassFixture.Class;

/** Matrices with fresh codes, a season to ask them of, and jaws of known age with who read them. */
@ApplicationScoped
public class AgeingFixture {
    /** A species of its own, so that no other test's jaws of known age are among these. */
    public static final String SPECIES = "AGEING_DEER";

    /** Counts of src/test/resources/prevalence/ageing.R. */
    public static final List<Class> HERE = List.of(
            new Class("FAWN", "MALE", 1, 60),
            new Class("FAWN", "FEMALE", 0, 55),
            new Class("YEARLING", "MALE", 9, 120),
            new Class("YEARLING", "FEMALE", 4, 90),
            new Class("ADULT", "MALE", 41, 210),
            new Class("ADULT", "FEMALE", 18, 190));

    private static final String[] AGES = {"FAWN", "YEARLING", "ADULT"};
    private static final String HEAD = "code,name,species,kind,source,as_of,sex,true_class,read_class,jaws,share\n";

    private final ClassFixture classes;
    private final SeasonFixture seasons;
    private final EntityManager entities;

    AgeingFixture(ClassFixture classes, SeasonFixture seasons, EntityManager entities) {
        this.classes = classes;
        this.seasons = seasons;
        this.entities = entities;
    }

    /** A stated matrix as the coordinator imports it; returns its code. */
    public String stated(double[][] shares) {
        String code = code();
        classes.post("ageing-error-matrices", HEAD + rows(code, "STATED", "BOTH", shares, false))
                .statusCode(200);
        return code;
    }

    /** The demo's matrix, posted as its file says; returns its code. */
    public String ofTheDemo() {
        try {
            classes.post(
                            "ageing-error-matrices",
                            Files.readString(Path.of("demo-data", "setup", "ageing-error-matrices.csv")))
                    .statusCode(200);
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
        return "PLAN_2026";
    }

    /** A cited matrix of jaws for males and females. */
    public String cited(double[][] males, double[][] females) {
        String code = code();
        classes.post(
                        "ageing-error-matrices",
                        HEAD + rows(code, "CITED", "MALE", males, true) + rows(code, "CITED", "FEMALE", females, true))
                .statusCode(200);
        return code;
    }

    static String code() {
        return "A" + UUID.randomUUID().toString().substring(0, 8).toUpperCase(Locale.ROOT);
    }

    static String rows(String code, String kind, String sex, double[][] cells, boolean jaws) {
        StringBuilder rows = new StringBuilder();
        for (int i = 0; i < AGES.length; i++) {
            for (int j = 0; j < AGES.length; j++) {
                String cell = jaws ? String.valueOf((int) cells[i][j]) + "," : "," + cells[i][j];
                rows.append(String.join(
                                ",",
                                code,
                                "A matrix",
                                SeasonFixture.SPECIES,
                                kind,
                                "Told by a test",
                                "2026-08-01",
                                sex,
                                AGES[i],
                                AGES[j],
                                cell))
                        .append("\n");
            }
        }
        return rows.toString();
    }

    /** The season's animals become those of {@link #SPECIES}. */
    public void ofItsOwnSpecies(String season) {
        seasons.ensure();
        sql("insert into species (code, name, position, key_reviewed) values ('" + SPECIES
                + "', 'Deer of the ageing test', 901, false) on conflict do nothing");
        sql("update animal set species = '" + SPECIES + "' where season = '" + season + "'");
        sql("update line set species = '" + SPECIES + "' where season = '" + season + "'");
    }

    /** A jaw reading of an animal, so many hours after a day in 2020. */
    public void reading(String kit, String who, String method, String ageClass, boolean blind, int hours) {
        sql("insert into jaw_reading (id, kit, read_at, examiner, method, observation, age_class, certainty, disputed,"
                + " needs_second_reader, drawn, blind, rule_set_version, received_by, received_at) values"
                + " (gen_random_uuid(), '" + kit + "', '2020-11-14T15:00:00Z', '" + who + "', '" + method + "', '{}', '"
                + ageClass + "', 'CLEAR', false, false, false, " + blind + ", 't', '" + who
                + "', timestamptz '2020-11-14' + interval '" + hours + " hours')");
    }

    /** A jaw of known age on the panel and what a person answered to it in finished practice, each answer a round. */
    public void practiced(String kit, String kind, String known, String person, String... answers) {
        UUID jaw = UUID.randomUUID();
        sql("insert into reference_jaw (id, kit, kind, age_class, source, added_by, added_at) values ('" + jaw + "', '"
                + kit + "', '" + kind + "', '" + known + "', 'test', 'test', '2020-11-01')");
        for (int i = 0; i < answers.length; i++) {
            UUID round = UUID.randomUUID();
            sql("insert into practice_round (id, person, rule_set_version, jaws, begun_at, finished_at, right_answers)"
                    + " values ('" + round + "', '" + person
                    + "', 't', 1, '2020-11-20', timestamptz '2020-11-20' + interval '"
                    + (i + 1) + " hours', 0)");
            sql("insert into practice_jaw (round, position, jaw, kind, right_class, given_class, given_at) values ('"
                    + round + "', 1, '" + jaw + "', '" + kind + "', '" + known + "', '" + answers[i]
                    + "', timestamptz '2020-11-20' + interval '" + i + " hours')");
        }
    }

    public void sql(String statement) {
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(statement).executeUpdate());
    }
}
