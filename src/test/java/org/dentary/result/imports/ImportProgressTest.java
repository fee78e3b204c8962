package org.dentary.result.imports;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

/** How far a large file is, told while its own transaction is open; and what is seen of one that ended in the middle. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ImportProgressTest {
    @Inject
    LargeFile large;

    @Test
    void whileALargeFileIsPostedOthersSeeHowFarItIs() throws Exception {
        UUID id = large.previewed();
        as("liaison").get(api(id) + "/progress").then().statusCode(200).body("state", equalTo("DONE"));
        CompletableFuture<Response> posting;
        try (LargeFile.Held held = large.hold(id)) {
            posting = CompletableFuture.supplyAsync(() -> as("liaison")
                    .contentType("application/json")
                    .body("{\"leaveOut\":[" + faultyLines() + "]}")
                    .post(api(id) + "/posting"));
            until(id, "step", "CHECKING");
            as("liaison")
                    .get(api(id) + "/progress")
                    .then()
                    .body("act", equalTo("POSTING"))
                    .body("state", equalTo("RUNNING"))
                    .body("fileName", equalTo("large.csv"))
                    .header("Cache-Control", "private, no-store");
            as("auditor").get(api(id)).then().statusCode(200).body("state", equalTo("POSTING"));
            page().get("/results/imports/" + id)
                    .then()
                    .statusCode(200)
                    .header("Refresh", "2")
                    .body(containsString("<progress"))
                    .body(not(containsString("Post the findings")));
            assertTrue(!posting.isDone());
        }
        assertEquals(200, posting.join().statusCode(), posting.join().asString());
        as("liaison").get(api(id)).then().body("state", equalTo("POSTED")).body("posted", equalTo(1));
        as("liaison")
                .get(api(id) + "/progress")
                .then()
                .body("state", equalTo("DONE"))
                .body("percent", equalTo(100));
    }

    @Test
    void oneThatWasStoppedInTheMiddleIsNotStuck() throws Exception {
        UUID id = large.previewed();
        large.abandoned(id);
        as("liaison").get(api(id) + "/progress").then().body("state", equalTo("STOPPED"));
        as("liaison").get(api(id)).then().body("state", equalTo("PREVIEWED"));
        page().get("/results/imports/" + id)
                .then()
                .statusCode(409)
                .body(containsString("nothing was posted. Post it again"))
                .body(containsString("Post the findings"));
        page().contentType("application/x-www-form-urlencoded")
                .formParam("leaveOutFaulty", "yes")
                .post("/results/imports/" + id + "/posting")
                .then()
                .statusCode(303);
        until(id, "DONE");
        as("liaison").get(api(id)).then().body("state", equalTo("POSTED")).body("posted", equalTo(1));
    }

    @Test
    void aLargeFileSentByPageIsLookedThroughBehindItAndItsRefusalIsSaid() throws Exception {
        String location = sent(large.csv().getBytes(StandardCharsets.UTF_8));
        UUID id = UUID.fromString(location.substring(location.lastIndexOf('/') + 1));
        until(id, "DONE");
        as("liaison")
                .get(api(id))
                .then()
                .body("state", equalTo("PREVIEWED"))
                .body("postable", equalTo(1))
                .body("problemCount", greaterThan(LargeFile.FAULTY - 1))
                .body("uploadedBy", equalTo("T_LIAISON"));
        location =
                sent(("nothing\u00e9" + "x".repeat(ImportService.LARGE_BYTES)).getBytes(StandardCharsets.ISO_8859_1));
        id = UUID.fromString(location.substring(location.lastIndexOf('/') + 1));
        until(id, "REFUSED");
        as("liaison").get(api(id)).then().statusCode(404);
        page().get(location).then().statusCode(422).body(containsString("not in UTF-8"));
        as("liaison")
                .get(api(UUID.randomUUID()) + "/progress")
                .then()
                .statusCode(404)
                .body("code", equalTo("IMPORT_UNKNOWN"));
    }

    private static String sent(byte[] file) {
        String location = page().multiPart("laboratory", "T_LAB")
                .multiPart("file", "large.csv", file, "text/csv")
                .post("/results/imports")
                .then()
                .statusCode(303)
                .extract()
                .header("Location");
        return location.substring(location.indexOf("/results"));
    }

    private static String faultyLines() {
        StringBuilder lines = new StringBuilder("3");
        for (int line = 4; line < LargeFile.FAULTY + 3; line++) {
            lines.append(',').append(line);
        }
        return lines.toString();
    }

    private static void until(UUID id, String state) throws InterruptedException {
        until(id, "state", state);
    }

    private static void until(UUID id, String field, String value) throws InterruptedException {
        for (int i = 0; i < 600; i++) {
            String now = as("liaison").get(api(id) + "/progress").path(field);
            if (value.equals(now)) {
                return;
            }
            Thread.sleep(50);
        }
        throw new AssertionError(
                "not " + value + ": " + as("liaison").get(api(id) + "/progress").asString());
    }

    private static String api(UUID id) {
        return "/api/v1/result-imports/" + id;
    }

    private static RequestSpecification page() {
        return as("liaison").redirects().follow(false);
    }
}
