package org.dentary.portal.stock;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.kit.IssuedBlock;
import org.dentary.kit.KitFixture;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class KitStockTest {
    @Inject
    IntakeFixture intake;

    @Inject
    KitFixture kits;

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

    private static void voidLabel(String code) {
        as("coordinator")
                .contentType("application/json")
                .body("{\"reason\": \"torn\"}")
                .put("/api/v1/labels/" + code + "/voiding")
                .then()
                .statusCode(201);
    }

    private static void account(String path, String kit, String fate) {
        as("coordinator")
                .contentType("application/json")
                .body("{\"kits\": [\"" + kit + "\"], \"fate\": \"" + fate + "\", \"reason\": \"end of season\"}")
                .put(path + "/unused-kits")
                .then()
                .statusCode(200);
    }
}
