package org.dentary.result.mapping;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;

import ca.uhn.hl7v2.DefaultHapiContext;
import ca.uhn.hl7v2.HapiContext;
import ca.uhn.hl7v2.Version;
import ca.uhn.hl7v2.parser.CanonicalModelClassFactory;
import ca.uhn.hl7v2.validation.builder.support.DefaultValidationBuilder;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.config.EncoderConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.http.ContentType;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.result.FindingsFixture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * A laboratory's HL7 messages in its own codes. The messages are held against HL7 v2.5.1 by HAPI: structure, known segments,
 * data types. SNOMED CT codes for detected and not detected as a published value set of test results names them.
 */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class CodeMapsTest {
    private static final String MAP = """
            {"inForceFrom":"%s","codes":{
              "OBX-3":{"SCR^L":"SCREENING"},
              "OBX-5":{"260415000^SCT":"NOT_DETECTED","260373001^SCT":"SUSPECT"},
              "OBX-17":{"EIA":"T_SCREEN"},
              "SPM-4":{"LN^L":"MEDIAL_RETROPHARYNGEAL_NODE","BS^L":"OBEX"}}}
            """;
    private static final String NOT_DETECTED = "260415000^Not detected^SCT";

    @Inject
    FindingsFixture laboratories;

    @Inject
    EntityManager entities;

    private String laboratory;
    private Deer deer;

    @BeforeEach
    void setUp() {
        deer = laboratories.atTheLaboratory(SeasonFixture.UNIT);
        laboratory = "T_H" + UUID.randomUUID().toString().substring(0, 8).toUpperCase(Locale.ROOT);
        sql("insert into laboratory (code, name, position) values ('" + laboratory + "', 'Laboratory " + laboratory
                + "', 90)");
        sql("update submission set laboratory = '" + laboratory + "' where id in (select submission from"
                + " submission_specimen where code = '" + deer.label(Part.NODE_LEFT) + "')");
    }

    @Test
    void aMessageInTheLaboratorysCodesIsPostedAndRepeatedItChangesNothing() throws Exception {
        keep(1, MAP.formatted("2025-09-01")).statusCode(201);
        keep(1, MAP.formatted("2025-09-01")).statusCode(200);
        String message = message("C1", "SCR^Screening^L", NOT_DETECTED, "LN^Lymph node^L");
        UUID id = UUID.randomUUID();
        send(id, message).statusCode(201).body("problems", hasSize(0)).body("postable", equalTo(1));
        post(id).statusCode(200).body("posted", equalTo(1));
        as("liaison")
                .get("/api/v1/animals/" + deer.kit() + "/findings")
                .then()
                .body("items", hasSize(1))
                .body("items[0].finding", equalTo("NOT_DETECTED"))
                .body("items[0].method", equalTo("T_SCREEN"))
                .body("items[0].testedOn", equalTo("2025-11-20"));
        UUID again = UUID.randomUUID();
        send(again, message).statusCode(201).body("repeats", equalTo(1)).body("postable", equalTo(0));
        post(again).statusCode(200).body("posted", equalTo(0));
        UUID otherwise = UUID.randomUUID();
        send(otherwise, message.replace(NOT_DETECTED, "260373001^Detected^SCT").replace("||||||F", "||||||C"))
                .statusCode(201)
                .body("problems.rule", hasItem("MESSAGE_SAID_OTHERWISE"));
        post(otherwise).statusCode(409);
        as("liaison").get("/api/v1/animals/" + deer.kit() + "/findings").then().body("items", hasSize(1));
    }

    /** HL7 v2.5.1, 2.14.9.10 (from memory): MSH-10 uniquely identifies the message. */
    @Test
    void aNumberThatComesAgainWithOtherTissueIsPostedOnlyWhenSomebodyAcceptsIt() throws Exception {
        keep(1, MAP.formatted("2025-09-01")).statusCode(201);
        String first = deer.label(Part.NODE_LEFT);
        String message = message("C20", "SCR^Screening^L", NOT_DETECTED, "LN^Lymph node^L");
        UUID before = UUID.randomUUID();
        send(before, message).statusCode(201).body("repeatedMessages", hasSize(0));
        post(before).statusCode(200);
        Deer other = laboratories.atTheLaboratory(SeasonFixture.UNIT);
        sql("update submission set laboratory = '" + laboratory + "' where id in (select submission from"
                + " submission_specimen where code = '" + other.label(Part.NODE_LEFT) + "')");
        UUID id = UUID.randomUUID();
        send(id, message.replace(first, other.label(Part.NODE_LEFT)).replace("|H-" + deer.kit(), "|H-" + other.kit()))
                .statusCode(201)
                .body("problems", hasSize(0))
                .body("postable", equalTo(1))
                .body("repeatedMessages", hasSize(1))
                .body("repeatedMessages[0].before", equalTo(before.toString()));
        post(id).statusCode(409)
                .body("code", equalTo("MESSAGE_REPEATED"))
                .body("errors[0].message", containsString(before.toString()));
        as("liaison")
                .get("/results/imports/" + id)
                .then()
                .body(containsString("Numbers that were posted before"), containsString("name=\"otherTests\""));
        as("liaison")
                .redirects()
                .follow(false)
                .formParams("line", "")
                .post("/results/imports/" + id + "/posting")
                .then()
                .statusCode(409)
                .body(containsString("was posted before"));
        as("liaison")
                .contentType("application/json")
                .body("{\"leaveOut\":[],\"otherTests\":true}")
                .post("/api/v1/result-imports/" + id + "/posting")
                .then()
                .statusCode(200)
                .body("posted", equalTo(1))
                .body("repeatedMessages", hasSize(0));
        UUID again = UUID.randomUUID();
        send(again, message).statusCode(201).body("repeats", equalTo(1)).body("repeatedMessages", hasSize(0));
    }

    @Test
    void aCodeThatTheMapDoesNotKnowIsNamedWithItsFieldAndNothingElseIsSaidOfIt() throws Exception {
        keep(1, MAP.formatted("2025-09-01")).statusCode(201);
        send(UUID.randomUUID(), message("C2", "SCR^Screening^L", "82334004^Indeterminate^SCT", "LN^Lymph node^L"))
                .statusCode(201)
                .body("problems", hasSize(1))
                .body("problems[0].rule", equalTo("CODE_UNKNOWN"))
                .body("problems[0].field", equalTo("finding"))
                .body(
                        "problems[0].message",
                        allOf(
                                containsString("OBX-5 says '82334004^SCT'"),
                                containsString("edition 1"),
                                containsString("keep the next edition")));
        send(UUID.randomUUID(), message("C3", "SCR^Screening^OTHER", NOT_DETECTED, "LN^Lymph node^L"))
                .statusCode(201)
                .body("problems.message", hasItem(containsString("OBX-3 says 'SCR^OTHER'")));
    }

    @Test
    void tissueOtherThanRecordedIsNamed() throws Exception {
        keep(1, MAP.formatted("2025-09-01")).statusCode(201);
        send(UUID.randomUUID(), message("C4", "SCR^Screening^L", NOT_DETECTED, "BS^Brain stem^L"))
                .statusCode(201)
                .body("problems.rule", hasItem("TISSUE_DIFFERS"))
                .body("problems.message", hasItem(containsString("OBEX")));
    }

    /** OBX-23, the ninth field after OBX-14. */
    @Test
    void whoMadeTheTestIsKnownByItsIdentifierAndKeptWithTheFinding() throws Exception {
        keep(1, MAP.formatted("2025-09-01")).statusCode(201);
        String code = "H" + deer.kit();
        String told = message("C9", "SCR^Screening^L", NOT_DETECTED, "LN^Lymph node^L")
                .replace("EIA^x^L\r", "EIA^x^L||||||Reference Hall^L^^^^TV^XX^^^" + code + "\r");
        UUID unknown = UUID.randomUUID();
        send(unknown, told)
                .statusCode(201)
                .body("problems", hasSize(1))
                .body("problems[0].rule", equalTo("LABORATORY_UNKNOWN"))
                .body("problems[0].field", equalTo("performing_laboratory"))
                .body(
                        "problems[0].message",
                        allOf(containsString("'" + code + "' is not set up"), containsString("OBX-23")));
        post(unknown).statusCode(409);
        keep(
                        2,
                        MAP.formatted("2025-09-01")
                                .replace("\"SPM-4\"", "\"OBX-23\":{\"" + code + "^TV\":\"NOBODY\"},\"SPM-4\""))
                .statusCode(422)
                .body("errors.rule", hasItem("WORD_UNKNOWN"));
        keep(
                        2,
                        MAP.formatted("2025-09-01")
                                .replace(
                                        "\"SPM-4\"", "\"OBX-23\":{\"" + code + "^TV\":\"T_LAB_CONFIRMING\"},\"SPM-4\""))
                .statusCode(201);
        UUID known = UUID.randomUUID();
        send(known, told).statusCode(201).body("problems", hasSize(0));
        post(known).statusCode(200).body("posted", equalTo(1));
        as("liaison")
                .get("/api/v1/animals/" + deer.kit() + "/findings")
                .then()
                .body("items[0].laboratory", equalTo(laboratory))
                .body("items[0].performingLaboratory", equalTo("T_LAB_CONFIRMING"));
        as("liaison")
                .accept("text/html")
                .get("/animals/" + deer.kit())
                .then()
                .statusCode(200)
                .body(containsString("tested by"));
    }

    @Test
    void aMessageIsReadByTheEditionInForceOnItsDay() throws Exception {
        keep(1, MAP.formatted("2025-09-01")).statusCode(201);
        keep(2, MAP.formatted("2025-11-22").replace("260415000^SCT", "ND^L")).statusCode(201);
        send(UUID.randomUUID(), message("C5", "SCR^Screening^L", NOT_DETECTED, "LN^Lymph node^L"))
                .body("postable", equalTo(1));
        String later = message("C6", "SCR^Screening^L", NOT_DETECTED, "LN^Lymph node^L")
                .replace("|20251121120000||ORU", "|20251122080000||ORU");
        send(UUID.randomUUID(), later).body("problems.message", hasItem(containsString("edition 2")));
        send(UUID.randomUUID(), later.replace(NOT_DETECTED, "ND^Not detected^L"))
                .body("postable", equalTo(1));
    }

    @Test
    void withoutAMapOurOwnWordsAreRead() throws Exception {
        send(
                        UUID.randomUUID(),
                        message("C7", "SCREENING", "NOT_DETECTED", "LN^Lymph node^L")
                                .replace("EIA^x^L", "T_SCREEN"))
                .statusCode(201)
                .body("postable", equalTo(1));
        send(UUID.randomUUID(), message("C8", "SCREENING", NOT_DETECTED, "LN^Lymph node^L"))
                .body("problems.rule", hasItems("WORD_UNKNOWN", "METHOD_UNKNOWN"));
    }

    @Test
    void everyFaultOfAMapIsNamedAndItsPageTakesPairs() {
        keep(1, """
                        {"inForceFrom":"2025-09-01","codes":{"ZXX-1":{"a":"b"},"OBX-5":{"a^b^c":"DETECTED","d":"PRESENT"}}}
                        """).statusCode(422).body("errors.rule", hasItems("FIELD_UNKNOWN", "NOT_A_CODE", "WORD_UNKNOWN"));
        keep(1, "{\"codes\":{\"OBX-5\":{\"d\":\"DETECTED\"}}}").statusCode(422);
        keep(2, MAP.formatted("2025-09-01")).statusCode(409).body("code", equalTo("EDITION_NOT_NEXT"));
        as("sampler").get("/api/v1/code-maps").then().statusCode(403);
        as("auditor")
                .contentType("application/json")
                .body(MAP.formatted("2025-09-01"))
                .put("/api/v1/code-maps/" + laboratory + "/1")
                .then()
                .statusCode(403);
        typed("someday", "OBX-5: ND^L = NOT_DETECTED").statusCode(422).body(containsString("is not a day"));
        typed("2025-09-01", "ND = NOT_DETECTED").statusCode(422);
        typed("2025-09-01", "OBX-5: ND^L = NOT_DETECTED").statusCode(303);
        as("liaison")
                .accept("text/html")
                .get("/code-maps?laboratory=" + laboratory)
                .then()
                .statusCode(200)
                .body(containsString("OBX-5: ND^L = NOT_DETECTED"));
        as("liaison")
                .accept("text/csv")
                .get("/code-maps/" + laboratory + "/1.csv")
                .then()
                .statusCode(200)
                .body(equalTo("laboratory,edition,in_force_from,field,code,system,ours\r\n" + laboratory
                        + ",1,2025-09-01,OBX-5,ND,L,NOT_DETECTED\r\n"));
    }

    /** An ORU^R01 of one observation, valid by HAPI's rules for 2.5.1 and without a segment that the standard lacks. */
    private String message(String control, String stage, String finding, String tissue) throws Exception {
        String code = deer.label(Part.NODE_LEFT);
        String message = String.join(
                        "\r",
                        "MSH|^~\\&|LIMS|" + laboratory + "|DENTARY|AGENCY|20251121120000||ORU^R01^ORU_R01|" + control
                                + "-" + deer.kit() + "|P|2.5.1",
                        "PID|1||" + code + "||^unknown",
                        "OBR|1|" + code + "|H-" + deer.kit() + "^" + laboratory
                                + "|PRION^Prion screening^L||||||||||||||||||20251121120000|||F",
                        "OBX|1|CWE|" + stage + "|1|" + finding + "||||||F|||20251120|||EIA^x^L",
                        "SPM|1|" + code + "||" + tissue)
                + "\r";
        try (HapiContext hapi = new DefaultHapiContext()) {
            hapi.setModelClassFactory(new CanonicalModelClassFactory("2.5.1"));
            hapi.setValidationRuleBuilder(new DefaultValidationBuilder() {
                @Override
                protected void configure() {
                    super.configure();
                    forVersion(Version.V251)
                            .message("ORU", "R01")
                            .onlyKnownSegments()
                            .choiceElementsRespected()
                            .terser("MSH-10", not(empty()))
                            .terser("MSH-11-1", in("P", "T", "D"));
                }
            });
            hapi.getPipeParser().parse(message);
        }
        return message;
    }

    private ValidatableResponse typed(String from, String codes) {
        return as("liaison")
                .accept("text/html")
                .redirects()
                .follow(false)
                .formParam("laboratory", laboratory)
                .formParam("inForceFrom", from)
                .formParam("codes", codes)
                .post("/code-maps")
                .then();
    }

    private ValidatableResponse keep(int edition, String map) {
        return as("liaison")
                .contentType("application/json")
                .body(map)
                .put("/api/v1/code-maps/" + laboratory + "/" + edition)
                .then();
    }

    private ValidatableResponse send(UUID id, String message) {
        String type = "application/hl7-v2";
        return as("liaison")
                .config(RestAssuredConfig.config()
                        .encoderConfig(EncoderConfig.encoderConfig()
                                .appendDefaultContentCharsetToContentTypeIfUndefined(false)
                                .encodeContentTypeAs(type, ContentType.BINARY)))
                .contentType(type)
                .body(message.getBytes(StandardCharsets.UTF_8))
                .put("/api/v1/result-imports/" + id + "?laboratory=" + laboratory)
                .then();
    }

    private static ValidatableResponse post(UUID id) {
        return as("liaison")
                .contentType("application/json")
                .body("{}")
                .post("/api/v1/result-imports/" + id + "/posting")
                .then();
    }

    private void sql(String statement) {
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(statement).executeUpdate());
    }
}
