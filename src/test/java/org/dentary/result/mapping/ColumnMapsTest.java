package org.dentary.result.mapping;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItems;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.result.FindingsFixture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A laboratory's own columns, days and words; each test has a laboratory of its own. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ColumnMapsTest {
    private static final String MAP = """
            {"columns":{"Tube":"specimen_code","Case no.":"accession_number","Word":"finding","Read":"tested_on",
             "Sent out":"reported_on","Remarks":""},
             "fixed":{"test_method":"T_SCREEN","stage":"SCREENING"},"dateFormat":"MM/dd/uuuu",
             "words":{"finding":{"ND":"NOT_DETECTED","Reactive":"SUSPECT"}}}
            """;
    private static final String HEAD = "TUBE,Case No.,Word,Read,Sent out,Remarks\r\n";

    @Inject
    FindingsFixture laboratories;

    @Inject
    EntityManager entities;

    private String laboratory;
    private Deer deer;

    @BeforeEach
    void setUp() {
        deer = laboratories.atTheLaboratory(SeasonFixture.UNIT);
        laboratory = "T_L" + UUID.randomUUID().toString().substring(0, 8).toUpperCase(java.util.Locale.ROOT);
        sql("insert into laboratory (code, name, position) values ('" + laboratory + "', 'Laboratory " + laboratory
                + "', 90)");
        sql("update submission set laboratory = '" + laboratory + "' where id in (select submission from"
                + " submission_specimen where code = '" + deer.label(Part.NODE_LEFT) + "')");
    }

    @Test
    void aFileInTheLaboratorysOwnColumnsIsReadByItsMapAndPosted() {
        String file = HEAD + deer.label(Part.NODE_LEFT) + ",C-1,nd,11/20/2025,11/21/2025,kept cold\r\n";
        send(UUID.randomUUID(), file).statusCode(422).body("code", equalTo("COLUMN_MISSING"));
        keep(1, MAP).statusCode(201);
        keep(1, MAP).statusCode(200);
        UUID id = UUID.randomUUID();
        send(id, file).statusCode(201).body("problemCount", equalTo(0)).body("postable", equalTo(1));
        as("liaison")
                .contentType("application/json")
                .body("{}")
                .post("/api/v1/result-imports/" + id + "/posting")
                .then()
                .statusCode(200)
                .body("posted", equalTo(1));
        as("liaison")
                .get("/api/v1/animals/" + deer.kit() + "/findings")
                .then()
                .body("items[0].finding", equalTo("NOT_DETECTED"))
                .body("items[0].testedOn", equalTo("2025-11-20"));
        Number edition = QuarkusTransaction.requiringNew()
                .call(() -> (Number)
                        entities.createNativeQuery("select column_map from result_import where id = '" + id + "'")
                                .getSingleResult());
        org.junit.jupiter.api.Assertions.assertEquals(1, edition.intValue());
    }

    @Test
    void whatTheMapDoesNotKnowIsNamedAsItWasWritten() {
        keep(1, MAP).statusCode(201);
        String file = HEAD + deer.label(Part.NODE_LEFT) + ",C-1,murky,20/11/2025,11/21/2025,\r\n";
        send(UUID.randomUUID(), file)
                .statusCode(201)
                .body("problems.message", hasItems(containsString("MURKY"), containsString("20/11/2025")));
        send(
                        UUID.randomUUID(),
                        HEAD.replace("Remarks", "Freezer") + deer.label(Part.NODE_LEFT)
                                + ",C,ND,11/20/2025,11/21/2025,\r\n")
                .statusCode(422)
                .body("code", equalTo("COLUMN_UNKNOWN"));
    }

    @Test
    void aFileInOurOwnColumnsNeedsNoMap() {
        keep(1, MAP).statusCode(201);
        send(
                        UUID.randomUUID(),
                        "specimen_code,accession_number,test_method,stage,finding,tested_on,reported_on\r\n"
                                + deer.label(Part.NODE_LEFT)
                                + ",C-2,T_SCREEN,SCREENING,NOT_DETECTED,2025-11-20,2025-11-21\r\n")
                .statusCode(201)
                .body("postable", equalTo(1));
    }

    @Test
    void theNextEditionRulesAndTheOldOneIsKept() {
        keep(1, MAP).statusCode(201);
        keep(1, MAP.replace("MM/dd/uuuu", "dd.MM.uuuu")).statusCode(409).body("code", equalTo("EDITION_WRITTEN"));
        keep(3, MAP.replace("MM/dd/uuuu", "dd.MM.uuuu")).statusCode(409).body("code", equalTo("EDITION_NOT_NEXT"));
        keep(2, MAP.replace("MM/dd/uuuu", "dd.MM.uuuu")).statusCode(201);
        send(UUID.randomUUID(), HEAD + deer.label(Part.NODE_LEFT) + ",C-1,ND,20.11.2025,21.11.2025,\r\n")
                .statusCode(201)
                .body("problemCount", equalTo(0));
        as("auditor")
                .get("/api/v1/column-maps")
                .then()
                .body(
                        "items.findAll { it.laboratory == '" + laboratory + "' }.edition",
                        equalTo(java.util.List.of(2, 1)));
    }

    @Test
    void everyFaultOfAMapIsNamedAtOnce() {
        keep(1, """
                        {"columns":{"Tube":"specimen_code","Tube 2":"specimen_code","Word":"outcome"},
                         "fixed":{"finding":"NOT_DETECTED","stage":"FIRST"},"dateFormat":"MM/QQ",
                         "words":{"finding":{"ND":"NEGATIVE"},"accession_number":{"a":"b"}}}
                        """)
                .statusCode(422)
                .body(
                        "errors.rule",
                        hasItems(
                                "COLUMN_UNKNOWN",
                                "COLUMN_TWICE",
                                "NOT_FIXED",
                                "COLUMN_MISSING",
                                "NOT_A_FORMAT",
                                "WORD_UNKNOWN",
                                "NO_WORDS_THERE"));
        as("sampler").get("/api/v1/column-maps").then().statusCode(403);
        as("auditor")
                .contentType("application/json")
                .body(MAP)
                .put("/api/v1/column-maps/" + laboratory + "/1")
                .then()
                .statusCode(403);
    }

    @Test
    void aMapIsTypedAsPairsOnItsPage() {
        page("Tube = specimen_code\nnonsense", "").statusCode(422).body(containsString("is no pair"));
        page(
                        "Tube = specimen_code\nCase = accession_number\nWord = finding\nRead = tested_on\nOut = reported_on",
                        "test_method = T_SCREEN\nstage = SCREENING")
                .statusCode(303);
        as("liaison")
                .accept("text/html")
                .get("/column-maps?laboratory=" + laboratory)
                .then()
                .statusCode(200)
                .body(containsString("Case = accession_number"), containsString("finding: ND = NOT_DETECTED"));
        as("auditor")
                .get("/column-maps/" + laboratory + "/1.csv")
                .then()
                .statusCode(200)
                .body(
                        containsString("what,column,theirs,ours\r\ncolumn,accession_number,Case,\r\n"),
                        containsString("fixed,stage,,SCREENING\r\n"),
                        containsString("days,,MM/dd/uuuu,"))
                .body(containsString("word,finding,ND,NOT_DETECTED"));
    }

    private ValidatableResponse page(String columns, String fixed) {
        return as("liaison")
                .accept("text/html")
                .redirects()
                .follow(false)
                .formParam("laboratory", laboratory)
                .formParam("columns", columns)
                .formParam("fixed", fixed)
                .formParam("dateFormat", "MM/dd/uuuu")
                .formParam("words", "finding: ND = NOT_DETECTED")
                .post("/column-maps")
                .then();
    }

    private ValidatableResponse keep(int edition, String map) {
        return as("liaison")
                .contentType("application/json")
                .body(map)
                .put("/api/v1/column-maps/" + laboratory + "/" + edition)
                .then();
    }

    private ValidatableResponse send(UUID id, String file) {
        return as("liaison")
                .contentType("text/csv")
                .body(file)
                .put("/api/v1/result-imports/" + id + "?laboratory=" + laboratory)
                .then();
    }

    private void sql(String statement) {
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(statement).executeUpdate());
    }
}
