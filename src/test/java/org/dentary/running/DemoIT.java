package org.dentary.running;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/** What {@code deploy/run --demo} gives a newcomer: four invented seasons, loaded through imports and API without a fault. */
class DemoIT {
    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir(cleanup = CleanupMode.NEVER)
    Path data;

    @Test
    void everySeasonIsThereAndEveryRoleSignsIn() throws Exception {
        try (PackagedService demo = PackagedService.startDemo(data)) {
            assertTrue(!demo.said().contains(" ERROR "), demo.said());
            for (String role : List.of("sampler", "liaison", "epidemiologist", "coordinator", "notifier", "auditor")) {
                assertEquals(200, demo.get("/api/v1/seasons", basic(role)).statusCode(), role);
            }
            int taken = 0;
            for (JsonNode season : read(demo, "/api/v1/seasons").path("items")) {
                JsonNode report = read(
                        demo,
                        "/api/v1/prevalence?by=ageClass,sex&season="
                                + season.path("code").textValue());
                Map<String, Integer> steps = new HashMap<>();
                report.path("takenToCounted")
                        .forEach(step -> steps.put(
                                step.path("step").textValue(),
                                step.path("animals").intValue()));
                int all = steps.remove("TAKEN");
                assertEquals(
                        all, steps.values().stream().mapToInt(Integer::intValue).sum(), season.toString());
                assertEquals(
                        steps.get("COUNTED"),
                        report.path("total").path("counted").intValue());
                assertTrue(report.path("total").path("detected").intValue() > 0, season.toString());
                taken += all;
            }
            assertTrue(taken > 1_900, "about two thousand deer, not " + taken);
            assertTrue(read(demo, "/api/v1/data-cuts").path("items").size() >= 4);
            read(demo, "/api/v1/ageing-error?season=SY2025&matrix=KNOWN_AGE");
        }
    }

    private static JsonNode read(PackagedService demo, String path) throws Exception {
        HttpResponse<String> answer = demo.get(path, basic("epidemiologist"));
        assertEquals(200, answer.statusCode(), path + " " + answer.body());
        return JSON.readTree(answer.body());
    }

    private static String basic(String role) {
        return Base64.getEncoder().encodeToString((role + ":demo").getBytes(StandardCharsets.UTF_8));
    }
}
