package org.dentary.intake;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

/** Hidden fields and choices that a page did not offer are refused as such; nothing breaks and nothing is changed. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class HostileFormsTest {
    private static final List<String> VALUES =
            List.of("abc", " ", "99999999999999999999", "<script>alert(1)</script>", "+999999999-01-01");

    @Inject
    IntakeFixture deer;

    @Test
    void aVersionOrAChoiceThatIsNoneIsRefused() {
        Deer one = deer.aDeer();
        deer.take(one, deer.facts());
        for (String value : VALUES) {
            refused("sampler", "/intake/" + one.kit(), Map.of("version", value, "reason", "seen again"));
            refused("coordinator", "/animals/" + one.kit() + "/age", Map.of("stands", value, "version", "0"));
            refused(
                    "coordinator",
                    "/animals/" + one.kit() + "/age",
                    Map.of("stands", "FAWN", "reason", "looked again", "version", value));
        }
        as("sampler")
                .get("/api/v1/animals/" + one.kit())
                .then()
                .header("ETag", "\"0\"")
                .body(not(containsString("looked again")));
    }

    private static void refused(String account, String path, Map<String, String> form) {
        as(account)
                .accept("text/html")
                .contentType("application/x-www-form-urlencoded")
                .formParams(form)
                .post(path)
                .then()
                .statusCode(422)
                .contentType("text/html")
                .body(not(containsString("<script>alert")));
    }
}
