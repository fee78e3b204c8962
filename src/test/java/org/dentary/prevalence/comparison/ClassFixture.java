package org.dentary.prevalence.comparison;

import static io.restassured.RestAssured.given;

import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;

/** Seasons given by how many were detected of how many in each class, herds, cuts and who asks. */
@ApplicationScoped
public class ClassFixture {
    private static final String[] AGES = {"FAWN", "FAWN", "YEARLING", "YEARLING", "ADULT", "ADULT"};
    private static final String[] SEXES = {"MALE", "FEMALE"};

    private final LineFixture lines;
    private final SeasonFixture seasons;
    private final EntityManager entities;

    ClassFixture(LineFixture lines, SeasonFixture seasons, EntityManager entities) {
        this.lines = lines;
        this.seasons = seasons;
        this.entities = entities;
    }

    /** {@code detected} of {@code counted} animals of a class. */
    public record Class(String age, String sex, int detected, int counted) {}

    /** A season of its own with these animals; returns its code. */
    public String season(List<Class> classes) {
        String season = lines.season();
        for (Class one : classes) {
            if (one.detected() > 0) {
                lines.add(season, one.detected(), ALine.of(one.age(), one.sex(), "DETECTED"));
            }
            if (one.counted() > one.detected()) {
                lines.add(season, one.counted() - one.detected(), ALine.of(one.age(), one.sex(), "NOT_DETECTED"));
            }
        }
        return season;
    }

    /** A herd by fawns, yearlings, adults, males first; null leaves a class out. */
    @Transactional
    public void herd(String code, Integer... animals) {
        seasons.ensure();
        for (int i = 0; i < animals.length; i++) {
            if (animals[i] != null) {
                entities.createNativeQuery("insert into herd_structure (code, name, as_of, source, species, age_class,"
                                + " sex, animals) values (:code, 'Test herd', date '2025-04-30', 'Test model', :species,"
                                + " :age, :sex, :animals) on conflict do nothing")
                        .setParameter("code", code)
                        .setParameter("species", SeasonFixture.SPECIES)
                        .setParameter("age", AGES[i])
                        .setParameter("sex", SEXES[i % 2])
                        .setParameter("animals", animals[i])
                        .executeUpdate();
            }
        }
    }

    /** A data cut of the season as it is; returns its id. */
    public String cut(String season, String name) {
        String id = UUID.randomUUID().toString();
        as("epidemiologist")
                .contentType("application/json")
                .body("{\"season\":\"" + season + "\",\"name\":\"" + name + "\"}")
                .put("/api/v1/data-cuts/" + id)
                .then()
                .statusCode(201);
        return id;
    }

    /** Imports a set-up file as the coordinator does. */
    public ValidatableResponse post(String list, String file) {
        seasons.ensure();
        String at = "/api/v1/set-up-imports/" + UUID.randomUUID();
        as("coordinator")
                .contentType("text/csv")
                .body(file)
                .put(at + "?list=" + list)
                .then()
                .statusCode(201);
        return as("coordinator").post(at + "/posting").then();
    }

    public static RequestSpecification as(String username) {
        return given().auth().preemptive().basic(username, SeasonFixture.PASSWORD);
    }
}
