package org.dentary.portal.stock;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.List;
import org.dentary.SeasonFixture;
import org.dentary.codes.KitStem;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.kit.IssuedBlock;
import org.dentary.kit.KitFixture;
import org.dentary.kit.KitService;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.AccountService;
import org.dentary.platform.account.Role;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class KitStockTest {
    @Inject
    IntakeFixture intake;

    @Inject
    KitFixture kits;

    @Inject
    KitService labels;

    @Inject
    AccountService accounts;

    @Inject
    EntityManager entities;

    @Test
    void everyKitOfABlockIsAccountedForOnce() {
        IssuedBlock block = kits.aBlock(6, Part.JAW, Part.STUB);
        String path = "/api/v1/kit-blocks/" + block.id();
        // Used here in another season than issued for, used elsewhere, void, returned, lost, left.
        intake.put("sampler", "/animals/" + block.kits().get(0), intake.facts()).statusCode(201);
        ObjectNode elsewhere = intake.facts();
        elsewhere.put("station", SeasonFixture.WESTERN_STATION);
        elsewhere.put("diedOn", "2026-11-14");
        intake.put("sampler", "/animals/" + block.kits().get(1), elsewhere).statusCode(201);
        voidLabel(block.labels().get(4).code());
        voidLabel(block.labels().get(5).code());
        account(path, block.kits().get(3), "RETURNED");
        account(path, block.kits().get(4), "LOST");
        as("sampler").get(path + "/labels.pdf").then().statusCode(200);
        as("sampler")
                .get("/api/v1/kit-stock/" + block.id())
                .then()
                .statusCode(200)
                .body("kits", equalTo(6))
                .body("used", equalTo(2))
                .body("voided", equalTo(1))
                .body("returned", equalTo(1))
                .body("lost", equalTo(1))
                .body("left", equalTo(1))
                .body("usedElsewhere", equalTo(1))
                .body("usedInAnotherSeason", equalTo(1))
                .body("voidLabels", equalTo(2))
                .body("prints", equalTo(1));
        // A lost kit that turns up and is used counts as used.
        intake.put("sampler", "/animals/" + block.kits().get(4), intake.facts()).statusCode(201);
        as("sampler")
                .get("/api/v1/kit-stock/" + block.id())
                .then()
                .body("used", equalTo(3))
                .body("lost", equalTo(0))
                .body("left", equalTo(1));
        as("sampler-two").get("/api/v1/kit-stock/" + block.id()).then().statusCode(403);
    }

    @Test
    void whatIsSaidOfAKitIsPutRightAndOfAUsedOneRefused() {
        IssuedBlock block = kits.aBlock(3, Part.JAW, Part.STUB);
        String path = "/api/v1/kit-blocks/" + block.id();
        String stranger = kits.aKit(Part.JAW).get(0).kit();
        String used = block.kits().get(0);
        intake.put("sampler", "/animals/" + used, intake.facts()).statusCode(201);
        account(path, block.kits().get(1), "LOST");
        tally(block).body("lost", equalTo(1)).body("left", equalTo(1));
        account(path, block.kits().get(1), "LEFT");
        tally(block).body("lost", equalTo(0)).body("left", equalTo(2));
        accounting(path, "\"" + block.kits().get(2) + "\", \"" + used + "\", \"" + stranger + "\", \"!\"", "RETURNED")
                .statusCode(422)
                .body("errors.rule", contains("NOT_A_CODE", "NOT_OF_BLOCK", "KIT_USED"))
                .body("errors[2].message", containsString(new KitStem(used).grouped()));
        tally(block).body("returned", equalTo(0)).body("left", equalTo(2));
    }

    @Test
    void aKitIsInOnePlaceWhateverHappenedToItInWhatOrder() {
        IssuedBlock block = kits.aBlock(4, Part.JAW, Part.NODE_LEFT);
        String path = "/api/v1/kit-blocks/" + block.id();
        // Handed back, then voided: the labels must not be used, so void.
        account(path, block.kits().get(0), "RETURNED");
        voidLabel(block.labels().get(0).code());
        tally(block).body("returned", equalTo(1)).body("voided", equalTo(0)).body("voidLabels", equalTo(1));
        voidLabel(block.labels().get(1).code());
        tally(block).body("returned", equalTo(0)).body("voided", equalTo(1));
        // One label voided, the other used after all.
        voidLabel(block.labels().get(2).code());
        intake.put("sampler", "/animals/" + block.kits().get(1), intake.facts()).statusCode(201);
        // Tissue under a label that is another kit's animal's now: used, where that animal was taken in.
        IntakeFixture.Deer elsewhere = intake.aDeer();
        ObjectNode facts = intake.facts();
        facts.put("station", SeasonFixture.WESTERN_STATION);
        intake.put("sampler", "/animals/" + elsewhere.kit(), facts).statusCode(201);
        String stray = block.labels().get(5).code();
        labels.rebind(List.of(stray), elsewhere.kit());
        intake.put(
                        "sampler",
                        "/animals/" + elsewhere.kit() + "/specimens/" + stray,
                        intake.specimen(stray, "MEDIAL_RETROPHARYNGEAL_NODE", "LEFT"))
                .statusCode(201);
        // Printed twice, one label three times: still the same kits.
        as("sampler").get(path + "/labels.pdf").then().statusCode(200);
        as("sampler").get(path + "/labels.pdf?reason=jam&copies=JAW:3").then().statusCode(200);
        tally(block)
                .body("kits", equalTo(4))
                .body("used", equalTo(2))
                .body("voided", equalTo(1))
                .body("left", equalTo(1))
                .body("usedElsewhere", equalTo(1))
                .body("voidLabels", equalTo(3))
                .body("prints", equalTo(2));
        as("coordinator")
                .get("/api/v1/kit-stock/blocks.csv")
                .then()
                .body(containsString(block.id() + ",T2026,T_STATION_1,2,4,2,1,0,0,1,1,"));
    }

    private static ValidatableResponse tally(IssuedBlock block) {
        return as("sampler").get("/api/v1/kit-stock/" + block.id()).then().statusCode(200);
    }

    @Test
    void aStationThatRunsLowIsSaidToOnTheListAndAtHome() {
        kits.aBlockAt(SeasonFixture.WESTERN_STATION, 3, Part.JAW);
        as("sampler-two")
                .get("/api/v1/kit-stock")
                .then()
                .statusCode(200)
                .body("items.size()", equalTo(1))
                .body("items[0].station", equalTo(SeasonFixture.WESTERN_STATION))
                .body("items[0].low", equalTo(true));
        as("sampler-two").accept("text/html").get("/").then().statusCode(200).body(containsString("Station 2 has "));
        as("sampler-two")
                .get("/api/v1/kit-stock/stations.csv")
                .then()
                .statusCode(200)
                .contentType(containsString("text/csv"))
                .body(containsString("\r\nT_STATION_2,T2026,"));
    }

    @Test
    void aStationWithoutAnyKitOfASeasonThatTakesAnimalsInIsLowToo() {
        kits.aKit(Part.JAW);
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(
                                "insert into station (code, name, position, unit, time_zone) values"
                                        + " ('STOCK_NONE', 'Pike Creek', 905, 'T_UNIT_1', 'America/Chicago')"
                                        + " on conflict do nothing")
                        .executeUpdate());
        accounts.put("sampler-none", null, Role.SAMPLER, List.of("STOCK_NONE"), SeasonFixture.PASSWORD);
        as("sampler-none")
                .get("/api/v1/kit-stock")
                .then()
                .body("items.station", contains("STOCK_NONE"))
                .body("items.season", contains("T2026"))
                .body("items.kits", contains(0))
                .body("items.low", contains(true));
        as("sampler-none").accept("text/html").get("/").then().body(containsString("Pike Creek has none"));
        as("sampler-none").accept("text/html").get("/kits").then().body(containsString("None issued"));
    }

    private static void voidLabel(String code) {
        as("coordinator")
                .contentType("application/json")
                .body("{\"reason\": \"torn\"}")
                .put("/api/v1/labels/" + code + "/voiding")
                .then()
                .statusCode(201);
    }

    private static void account(String path, String kit, String fate) {
        accounting(path, "\"" + kit + "\"", fate).statusCode(200);
    }

    private static ValidatableResponse accounting(String path, String kits, String fate) {
        return as("coordinator")
                .contentType("application/json")
                .body("{\"kits\": [" + kits + "], \"fate\": \"" + fate + "\", \"reason\": \"end of season\"}")
                .put(path + "/unused-kits")
                .then();
    }
}
