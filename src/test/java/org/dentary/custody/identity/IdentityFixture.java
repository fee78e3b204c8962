package org.dentary.custody.identity;

import static org.dentary.custody.Http.json;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.restassured.response.ValidatableResponse;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.UUID;
import java.util.function.Consumer;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.story.dossier.DossierFixture;

/** Nodes counted in at the laboratory, and people who vouch for them. */
@ApplicationScoped
public class IdentityFixture {
    private final DossierFixture tissue;
    private final IntakeFixture intake;
    private final ObjectMapper json;

    IdentityFixture(DossierFixture tissue, IntakeFixture intake, ObjectMapper json) {
        this.tissue = tissue;
        this.intake = intake;
        this.json = json;
    }

    /** A deer of that unit whose left node the laboratory counted in. */
    public Deer received(String unit) {
        return received(unit, body -> {});
    }

    /** @param more adds to what is taken in */
    public Deer received(String unit, Consumer<ObjectNode> more) {
        Deer deer = taken(unit, more);
        String code = deer.label(Part.NODE_LEFT);
        tissue.accept("liaison", tissue.offer("sampler", code, "liaison", ""), code);
        tissue.received(code);
        return deer;
    }

    /** A deer of that unit whose left node the sampler has. */
    public Deer taken(String unit) {
        return taken(unit, body -> {});
    }

    private Deer taken(String unit, Consumer<ObjectNode> more) {
        Deer deer = tissue.aDeer();
        ObjectNode body = intake.facts().put("managementUnit", unit);
        more.accept(body);
        body.putArray("specimens")
                .add(intake.node(deer).put("collectedAt", tissue.ago(2).toString()));
        intake.take(deer, body);
        return deer;
    }

    /** What is sent to vouch for a code. */
    public ObjectNode asking(String code) {
        return json.createObjectNode()
                .put("code", code)
                .put("problem", "LABEL_DISAGREES_WITH_LIST")
                .put("problemText", "the list says 7G where the jar says 7Q")
                .put("irreplaceable", "the hunter has left with the carcass")
                .put("evidence", "the only jar of its box that is not on the list; the stub lay beside it")
                .put("password", SeasonFixture.PASSWORD);
    }

    public ValidatableResponse asks(String account, UUID id, ObjectNode body) {
        return json(account)
                .body(body.toString())
                .put("/api/v1/identity-exceptions/" + id)
                .then();
    }

    /** Id of an exception that the liaison asked for. */
    public UUID asked(String code) {
        UUID id = UUID.randomUUID();
        asks("liaison", id, asking(code)).statusCode(201);
        return id;
    }

    public ObjectNode deciding(boolean granted) {
        return json.createObjectNode()
                .put("granted", granted)
                .put("reason", "compared jar, list and stub")
                .put("password", SeasonFixture.PASSWORD);
    }

    public ValidatableResponse decides(String account, UUID id, ObjectNode body) {
        return json(account)
                .body(body.toString())
                .post("/api/v1/identity-exceptions/" + id + "/decision")
                .then();
    }

    public void granted(UUID id) {
        decides("coordinator", id, deciding(true)).statusCode(200);
    }

    public void refused(UUID id) {
        decides("coordinator", id, deciding(false)).statusCode(200);
    }

    /** The station's day. */
    public LocalDate today() {
        return LocalDate.ofInstant(tissue.ago(0), ZoneId.of("America/Chicago"));
    }

    /** A screening finding on the left node, final. */
    public UUID finds(Deer deer, String word) {
        UUID id = UUID.randomUUID();
        intake.put(
                        "liaison",
                        "/findings/" + id,
                        "{\"specimens\":[\"" + deer.label(Part.NODE_LEFT)
                                + "\"],\"method\":\"T_SCREEN\",\"stage\":\"SCREENING\",\"finding\":\"" + word
                                + "\",\"status\":\"FINAL\",\"accession\":\"X-" + deer.kit()
                                + "\",\"laboratory\":\"T_LAB\",\"testedOn\":\"" + today() + "\",\"reportedOn\":\""
                                + today() + "\"}")
                .statusCode(201);
        return id;
    }
}
