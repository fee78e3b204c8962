package org.dentary.submission;

import static org.dentary.intake.IntakeFixture.as;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.kit.KitFixture;

/** Tissue at the bench, and parcels on their way, as the liaison makes them. Collected 2025-11-14 at the station. */
@ApplicationScoped
public class SubmissionFixture {
    public static final String PACKED_AT = "2025-11-15T08:00:00-06:00";
    public static final String LEFT_AT = "2025-11-15T09:00:00-06:00";
    public static final String COUNTED_AT = "2025-11-16T10:00:00-06:00";

    private final IntakeFixture deer;
    private final KitFixture kits;

    SubmissionFixture(IntakeFixture deer, KitFixture kits) {
        this.deer = deer;
        this.kits = kits;
    }

    /** Code of a fresh left node of a new deer, held by the liaison. */
    public String aNode() {
        return aNode("liaison", "FRESH_CHILLED");
    }

    /** Code of a left node of a new deer, kept in that way and held by who recorded it. */
    public String aNode(String account, String preservation) {
        return aNode(account, preservation, deer.facts(), IntakeFixture.COLLECTED_AT);
    }

    /** The same of a deer whose hunter and exact place are known. */
    public String aNodeOfAHunter(String hunter, String telephone, double latitude, double longitude) {
        ObjectNode facts = deer.facts();
        facts.putObject("contact").put("name", hunter).put("phone", telephone);
        facts.putObject("point")
                .put("latitude", latitude)
                .put("longitude", longitude)
                .put("uncertaintyMetres", 20);
        return aNode("liaison", "FRESH_CHILLED", facts, IntakeFixture.COLLECTED_AT);
    }

    /** Code of a fresh left node taken then. */
    public String aNodeTaken(String collectedAt) {
        return aNode("liaison", "FRESH_CHILLED", deer.facts(), collectedAt);
    }

    private String aNode(String account, String preservation, ObjectNode facts, String collectedAt) {
        Deer one = deer.aDeer();
        deer.take(one, facts);
        deer.put(
                        account,
                        "/animals/" + one.kit() + "/specimens/" + one.label(Part.NODE_LEFT),
                        deer.node(one).put("preservation", preservation).put("collectedAt", collectedAt))
                .statusCode(201);
        return one.label(Part.NODE_LEFT);
    }

    /** Code of a label that is on nothing yet. */
    public String anUnusedLabel() {
        return deer.aDeer().label(Part.NODE_RIGHT);
    }

    /** Code of a box label that nobody opened yet. */
    public String anUnopenedBox() {
        return kits.aBlock(1, Part.BOX).labels().get(0).code();
    }

    /** Code of a box that was opened at the station. */
    public String aBox() {
        String code = anUnopenedBox();
        deer.put(
                        "liaison",
                        "/boxes/" + code,
                        "{\"place\":\"T_STATION_1\",\"occurredAt\":\"2025-11-14T12:00:00-06:00\",\"reason\":\"on paper\"}")
                .statusCode(201);
        return code;
    }

    /** Id of a submission just begun. */
    public String begun(String laboratory) {
        String id = UUID.randomUUID().toString();
        deer.put("liaison", "/submissions/" + id, "{\"laboratory\":\"" + laboratory + "\"}")
                .statusCode(201);
        return id;
    }

    /** Id of a submission to the first laboratory with these in it. */
    public String packed(String... codes) {
        String id = begun("T_LAB");
        for (String code : codes) {
            pack(id, code).statusCode(201);
        }
        return id;
    }

    /** Id of a submission that the carrier has. */
    public String sent(String... codes) {
        String id = packed(codes);
        dispatch(id).statusCode(200);
        return id;
    }

    /** A new deer whose left node the carrier has. */
    public Deer aDeerSent() {
        Deer one = deer.aDeer();
        deer.take(one, deer.facts());
        sendAsLiaison(one);
        return one;
    }

    /** The liaison takes the deer's left node and sends it to the first laboratory. */
    public void sendAsLiaison(Deer one) {
        String code = one.label(Part.NODE_LEFT);
        deer.put("liaison", "/animals/" + one.kit() + "/specimens/" + code, deer.node(one))
                .statusCode(201);
        sent(code);
    }

    public ValidatableResponse pack(String id, String code) {
        return pack(id, code, "{\"packedAt\":\"" + PACKED_AT + "\"}");
    }

    public ValidatableResponse pack(String id, String code, String body) {
        return deer.put("liaison", "/submissions/" + id + "/specimens/" + code, body);
    }

    public ValidatableResponse dispatch(String id) {
        return dispatch(id, LEFT_AT);
    }

    public ValidatableResponse dispatch(String id, String occurredAt) {
        return post(
                id + "/dispatch",
                "{\"occurredAt\":\"" + occurredAt + "\",\"carrier\":\"T_COURIER\",\"waybill\":\"W-7\","
                        + "\"shipper\":\"a trained shipper\",\"reason\":\"written down on paper\"}");
    }

    public ValidatableResponse post(String path, String body) {
        return as("liaison")
                .contentType("application/json")
                .body(body)
                .post("/api/v1/submissions/" + path)
                .then();
    }

    public ValidatableResponse receive(String id, String... codes) {
        return deer.put("liaison", "/submissions/" + id + "/receipt", receipt(List.of(codes), List.of()));
    }

    public ValidatableResponse receive(String id, String ifMatch, String body) {
        return as("liaison")
                .header("If-Match", ifMatch)
                .contentType("application/json")
                .body(body)
                .put("/api/v1/submissions/" + id + "/receipt")
                .then();
    }

    static String receipt(List<String> codes, List<String> damaged) {
        return "{\"receivedAt\":\"" + COUNTED_AT + "\",\"codes\":" + json(codes) + ",\"damaged\":" + json(damaged)
                + ",\"reason\":\"from the laboratory's list\"}";
    }

    public JsonPath view(String id) {
        return as("liaison")
                .get("/api/v1/submissions/" + id)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
    }

    /** Kinds and codes of what does not add up in it. */
    public List<String> discrepancies(String id) {
        JsonPath list = as("liaison")
                .get("/api/v1/discrepancies?subject=" + id)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        List<String> kinds = list.getList("items.kind");
        List<String> codes = list.getList("items.code");
        return java.util.stream.IntStream.range(0, kinds.size())
                .mapToObj(i -> kinds.get(i) + " " + codes.get(i))
                .sorted()
                .toList();
    }

    static String tomorrow() {
        return Instant.now(java.time.Clock.systemUTC()).plusSeconds(86_400).toString();
    }

    private static String json(List<String> codes) {
        return codes.stream().collect(Collectors.joining("\",\"", "[\"", "\"]")).replace("[\"\"]", "[]");
    }
}
