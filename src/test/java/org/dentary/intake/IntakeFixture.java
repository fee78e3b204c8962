package org.dentary.intake;

import static io.restassured.RestAssured.given;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.kit.KitFixture;
import org.dentary.kit.LabelOfKit;

/** Deer to take in: fresh kits, bodies as a client sends them, and who sends them. Deaths lie in the earlier season. */
@ApplicationScoped
public class IntakeFixture {
    public static final String DIED_ON = "2025-11-14";
    public static final String READ_AT = "2025-11-14T09:10:00-06:00";
    public static final String COLLECTED_AT = "2025-11-14T09:20:00-06:00";

    private final KitFixture kits;
    private final ObjectMapper json;

    IntakeFixture(KitFixture kits, ObjectMapper json) {
        this.kits = kits;
        this.json = json;
    }

    /** A kit with its labels: jaw, both nodes, obex, stub and a spare. */
    public record Deer(String kit, List<LabelOfKit> labels) {
        /** The label of that part. */
        public String label(Part part) {
            return labels.stream()
                    .filter(label -> label.part().equals(part.name()))
                    .findFirst()
                    .orElseThrow()
                    .code();
        }
    }

    public Deer aDeer() {
        List<LabelOfKit> labels =
                kits.aKit(Part.JAW, Part.NODE_LEFT, Part.NODE_RIGHT, Part.OBEX, Part.STUB, Part.SPARE_1);
        return new Deer(labels.get(0).kit(), labels);
    }

    /** An adult male from a hunter, jaw kept to be read, no tissue yet. */
    public ObjectNode facts() {
        ObjectNode body = json.createObjectNode();
        body.put("species", SeasonFixture.SPECIES)
                .put("origin", "WILD")
                .put("sex", "MALE")
                .put("sexEvidence", "GENITALIA_OR_UDDER")
                .put("diedOn", DIED_ON)
                .put("managementUnit", SeasonFixture.UNIT)
                .put("station", SeasonFixture.STATION)
                .put("mortalitySource", "HUNTER_HARVEST")
                .put("collectionRoute", "STATION")
                .put("clinicalSigns", "NONE_SEEN")
                .put("samplingBasis", "MANDATORY")
                .put("jawStatus", "COLLECTED_TO_READ");
        return body;
    }

    /** The same with the jaw read as a clear yearling that keeps its milk third tooth, and the left node taken. */
    public ObjectNode yearlingWithLeftNode(Deer deer) {
        ObjectNode body = facts();
        body.put("jawStatus", "READ");
        body.set("jawReading", yearling(UUID.randomUUID()));
        body.putArray("specimens").add(node(deer));
        return body;
    }

    /** The left node, fresh. */
    public ObjectNode node(Deer deer) {
        return specimen(deer.label(Part.NODE_LEFT), "MEDIAL_RETROPHARYNGEAL_NODE", "LEFT");
    }

    public ObjectNode specimen(String code, String tissue, String side) {
        return json.createObjectNode()
                .put("code", code)
                .put("tissue", tissue)
                .put("side", side)
                .put("preservation", "FRESH_CHILLED")
                .put("condition", "GOOD")
                .put("collectedAt", COLLECTED_AT);
    }

    /** Six cheek teeth, a three-cusped third, no dentine on the sixth: common practice, no source. */
    public ObjectNode yearling(UUID id) {
        return reading(id, 6, 3, "FULL", "DEFINED", "ERUPTING", "NOT_EXPOSED");
    }

    /** Six cheek teeth, third and sixth fully up with a defined line: common practice, no source. */
    public ObjectNode adult(UUID id) {
        return reading(id, 6, 2, "FULL", "DEFINED", "FULL", "DEFINED");
    }

    /** Four cheek teeth and a two-cusped third: J02, the class cannot stand. */
    public ObjectNode contradicting(UUID id) {
        return reading(id, 4, 2, "FULL", "NOT_EXPOSED", "NOT_ERUPTED", "NOT_EXPOSED");
    }

    /** An age known from a mark. */
    public ObjectNode knownAge(UUID id, String ageClass) {
        return json.createObjectNode()
                .put("id", id.toString())
                .put("readAt", READ_AT)
                .put("method", "KNOWN_AGE_MARK")
                .put("examinersClass", ageClass)
                .put("examinersCertainty", "CLEAR");
    }

    private ObjectNode reading(
            UUID id, int teeth, int cusps, String thirdUp, String thirdLine, String sixthUp, String sixthLine) {
        ObjectNode reading = json.createObjectNode();
        reading.put("id", id.toString()).put("readAt", READ_AT).put("cheekTeeth", teeth);
        reading.putObject("thirdTooth")
                .put("cusps", cusps)
                .put("eruption", thirdUp)
                .put("dentine", thirdLine);
        reading.putObject("sixthTooth").put("eruption", sixthUp).put("dentine", sixthLine);
        return reading;
    }

    /** Adds a specimen to a body. */
    public static ObjectNode with(ObjectNode body, ObjectNode specimen) {
        ArrayNode list = body.has("specimens") ? (ArrayNode) body.get("specimens") : body.putArray("specimens");
        list.add(specimen);
        return body;
    }

    /** A request by that account of the season's fixture. */
    public static RequestSpecification as(String account) {
        return given().auth().preemptive().basic(account, SeasonFixture.PASSWORD);
    }

    public ValidatableResponse put(String account, String path, Object body) {
        return as(account)
                .contentType("application/json")
                .body(body.toString())
                .put("/api/v1" + path)
                .then();
    }

    /** Takes a deer in as the sampler and expects it to be new. */
    public ValidatableResponse take(Deer deer, ObjectNode body) {
        return put("sampler", "/animals/" + deer.kit(), body).statusCode(201);
    }

    /** What the intake form sends of a yearling male with its left node. */
    public static Map<String, String> form(Deer one) {
        Map<String, String> form = new LinkedHashMap<>();
        form.put("readingId", UUID.nameUUIDFromBytes(one.kit().getBytes()).toString());
        form.put("species", SeasonFixture.SPECIES);
        form.put("sex", "MALE");
        form.put("sexEvidence", "GENITALIA_OR_UDDER");
        form.put("diedOn", DIED_ON);
        form.put("managementUnit", SeasonFixture.UNIT);
        form.put("station", SeasonFixture.STATION);
        form.put("mortalitySource", "HUNTER_HARVEST");
        form.put("collectionRoute", "STATION");
        form.put("samplingBasis", "MANDATORY");
        form.put("clinicalSigns", "NONE_SEEN");
        form.put("jawStatus", "READ");
        form.put("jaw.rowSeen", "WHOLE");
        form.put("jaw.cheekTeeth", "6");
        form.put("jaw.thirdTooth.cusps", "3");
        form.put("jaw.sixthTooth.eruption", "ERUPTING");
        form.put("jaw.sixthTooth.dentine", "NOT_EXPOSED");
        form.put("specimens", one.label(Part.NODE_LEFT));
        form.put("preservation", "FRESH_CHILLED");
        form.put("condition", "GOOD");
        form.put("at", "2025-11-14T09:20");
        return form;
    }
}
