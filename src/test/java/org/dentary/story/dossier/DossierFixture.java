package org.dentary.story.dossier;

import static org.dentary.intake.IntakeFixture.as;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.restassured.response.ValidatableResponse;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;

/** Specimens with a story: taken in with a hunter's contact, sealed, warmed, handed over, corrected. */
@ApplicationScoped
public class DossierFixture {
    public static final String HUNTER = "Wendeline Aspenquist";
    public static final String TELEPHONE = "(555) 0176";
    public static final String STROKES = "M20 100L60 40L100 160L140 60L200 120M220 90L380 90";

    private final SeasonFixture season;
    private final IntakeFixture intake;
    private final Clock clock;

    DossierFixture(SeasonFixture season, IntakeFixture intake, Clock clock) {
        this.season = season;
        this.intake = intake;
        this.clock = clock;
    }

    /** Code of a left node that the sampler took two hours ago from a hunter's deer. */
    public String aNode() {
        return aNode(intake.aDeer());
    }

    public String aNode(Deer deer) {
        return aNode(deer, IntakeFixture.DIED_ON);
    }

    /** The same of a deer that died on that day, which says the season. */
    public String aNode(Deer deer, String diedOn) {
        season.ensure();
        ObjectNode body = intake.facts().put("diedOn", diedOn);
        body.putObject("contact").put("name", HUNTER).put("phone", TELEPHONE);
        body.putArray("specimens").add(intake.node(deer).put("collectedAt", ago(2).toString()));
        intake.take(deer, body);
        return deer.label(Part.NODE_LEFT);
    }

    public Deer aDeer() {
        season.ensure();
        return intake.aDeer();
    }

    public Instant ago(int hours) {
        return clock.instant().minus(Duration.ofHours(hours));
    }

    /** Records an event of a kind; more is further members as JSON, beginning with a comma, or empty. */
    public UUID event(String account, String code, String kind, String more) {
        UUID id = UUID.randomUUID();
        put(
                        account,
                        "/custody-events/" + id,
                        "{\"codes\":[\"" + code + "\"],\"kind\":\"" + kind + "\",\"occurredAt\":\"" + clock.instant()
                                + "\"" + more + "}")
                .statusCode(201);
        return id;
    }

    /** Offers a code; more is further members as JSON, beginning with a comma, or empty. */
    public UUID offer(String account, String code, String to, String more) {
        UUID id = UUID.randomUUID();
        put(
                        account,
                        "/hand-overs/" + id,
                        "{\"codes\":[\"" + code + "\"],\"to\":\"" + to + "\",\"occurredAt\":\"" + clock.instant() + "\""
                                + more + "}")
                .statusCode(201);
        return id;
    }

    public void accept(String account, UUID offer, String code) {
        as(account)
                .contentType("application/json")
                .body("{\"codes\":[\"" + code + "\"],\"occurredAt\":\"" + clock.instant() + "\"}")
                .post("/api/v1/hand-overs/" + offer + "/acceptance")
                .then()
                .statusCode(200);
    }

    /** Packs a code of the liaison's for the laboratory, sends it and counts it in there. */
    public void received(String code) {
        String id = UUID.randomUUID().toString();
        put("liaison", "/submissions/" + id, "{\"laboratory\":\"" + SeasonFixture.LABORATORY + "\"}")
                .statusCode(201);
        put(
                        "liaison",
                        "/submissions/" + id + "/specimens/" + code,
                        "{\"packedAt\":\"" + clock.instant() + "\",\"overrideReason\":\"agreed\"}")
                .statusCode(201);
        as("liaison")
                .contentType("application/json")
                .body("{\"occurredAt\":\"" + clock.instant() + "\",\"carrier\":\"T_COURIER\",\"waybill\":\"W-7\","
                        + "\"shipper\":\"a trained shipper\"}")
                .post("/api/v1/submissions/" + id + "/dispatch")
                .then()
                .statusCode(200);
        put(
                        "liaison",
                        "/submissions/" + id + "/receipt",
                        "{\"receivedAt\":\"" + clock.instant() + "\",\"codes\":[\"" + code + "\"]}")
                .statusCode(201);
    }

    public ValidatableResponse put(String account, String path, String body) {
        return intake.put(account, path, body);
    }

    /** A node with a story: sealed, warmed, its seal gone, corrected, given to the liaison and to a courier who signed. */
    public String aNodeWithAStory() {
        return withAStory(aNode());
    }

    /** The story put on a node that the sampler took. */
    public String withAStory(String code) {
        event("sampler", code, "TAMPER_SEAL_APPLIED", ",\"tamperSeal\":\"TS 0042\"");
        UUID warm = event("sampler", code, "TEMPERATURE_READ", ",\"temperatureCelsius\":14.5,\"sensor\":\"probe 3\"");
        event(
                "sampler",
                code,
                "CORRECTED",
                ",\"temperatureCelsius\":13.5,\"reason\":\"misread the probe\",\"corrects\":\"" + warm + "\"");
        accept("liaison", offer("sampler", code, "liaison", ""), code);
        event("liaison", code, "TAMPER_SEAL_CHECKED", ",\"tamperSeal\":\"TS 0043\"");
        offer(
                "liaison",
                code,
                SeasonFixture.PARTY,
                ",\"signedBy\":\"R. Okonedo\",\"signature\":\"" + STROKES + "\",\"place\":\"loading bay\"");
        return code;
    }
}
