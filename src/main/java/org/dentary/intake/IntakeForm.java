package org.dentary.intake;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.qute.TemplateData;
import jakarta.ws.rs.core.MultivaluedMap;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.dentary.codes.LabelCode;
import org.dentary.codes.NotACode;
import org.dentary.codes.Part;
import org.dentary.jaw.key.KeyQuestion;
import org.dentary.platform.CalendarText;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;

/**
 * What was typed into a form of the intake, by field; fields are named as in the API's body. An unknown field is empty.
 *
 * @param typed what was typed, trimmed
 */
@TemplateData
public record IntakeForm(Map<String, String> typed) {
    /** What one deer usually has in common with the next at the same table. */
    static final List<String> CARRIED = List.of(
            "station",
            "managementUnit",
            "species",
            "mortalitySource",
            "collectionRoute",
            "samplingBasis",
            "diedOn",
            "preservation");

    private static final List<String> TEXTS = List.of(
            "species",
            "origin",
            "sex",
            "sexEvidence",
            "diedOn",
            "diedOnPrecision",
            "diedOnReason",
            "managementUnit",
            "station",
            "mortalitySource",
            "collectionRoute",
            "clinicalSigns",
            "samplingBasis",
            "jawStatus",
            "jawReason",
            "antlers",
            "mortalitySourceText",
            "collectionRouteText",
            "managementUnitReason",
            "seenWith",
            "notes",
            "reason");
    /** Fields of the form about the jaw itself, and what a reading calls them. */
    private static final Map<String, String> OF_THE_JAW =
            Map.of("jawSide", "side", "jawState", "jawState", "jawWhereabouts", "whereabouts");

    /** The kinds of number that the form offers. */
    private static final Set<String> IDENTIFIERS = Set.of("REGISTRATION", "EAR_TAG", "OLD_ID");

    private static final Set<String> NUMBERS = Set.of("cheekTeeth", "cusps");

    public IntakeForm {
        typed = Map.copyOf(typed);
    }

    public static IntakeForm of(MultivaluedMap<String, String> fields) {
        Map<String, String> typed = new LinkedHashMap<>();
        fields.forEach((name, values) -> {
            if (!values.isEmpty() && values.get(0) != null && !values.get(0).isBlank()) {
                typed.put(name, values.get(0).trim());
            }
        });
        return new IntakeForm(typed);
    }

    /** What was typed into a field; empty for nothing. */
    public String value(String field) {
        return typed.getOrDefault(field, "");
    }

    /** The fields that the next deer takes over from this one, those that were typed. */
    public List<String> carried() {
        return CARRIED.stream().filter(typed::containsKey).toList();
    }

    /** Whether a choice of a field was taken. */
    public boolean has(String field, String value) {
        return value(field).equals(value);
    }

    /** Whether the number is of a kind that the form does not offer, as other programs' clients send them. */
    public boolean isOtherIdentifier() {
        return typed.containsKey("identifierType") && !IDENTIFIERS.contains(typed.get("identifierType"));
    }

    IntakeForm with(String field, String value) {
        Map<String, String> more = new LinkedHashMap<>(typed);
        more.put(field, value);
        return new IntakeForm(more);
    }

    /** The body that the API would be sent. */
    ObjectNode body(ObjectMapper json, ZoneId station) {
        ObjectNode body = json.createObjectNode();
        TEXTS.stream().filter(typed::containsKey).forEach(field -> body.put(field, typed.get(field)));
        if (has("enteredInError", "true")) {
            body.put("enteredInError", true);
        }
        if (has("jawStatus", "READ") && typed.keySet().stream().anyMatch(IntakeForm::isCue)) {
            body.set("jawReading", reading(json, station).put("id", value("readingId")));
        }
        ArrayNode specimens = specimens(json, station);
        if (!specimens.isEmpty()) {
            body.set("specimens", specimens);
        }
        measures(body);
        PrivateForm.add(this, body, json);
        if (!value("identifier").isEmpty()) {
            body.putArray("identifiers")
                    .addObject()
                    .put("type", typed.getOrDefault("identifierType", "REGISTRATION"))
                    .put("issuer", typed.get("identifierIssuer"))
                    .put("value", value("identifier"));
        }
        return body;
    }

    /** What was weighed and felt: a mass in pounds becomes kilograms to a tenth. */
    private void measures(ObjectNode body) {
        if (!value("mass").isEmpty()) {
            BigDecimal typed = PrivateForm.number("mass", value("mass"));
            body.put("fieldDressedKilograms", has("massUnit", "LB") ? kilograms(typed) : typed);
        }
        if (!value("lactating").isEmpty()) {
            body.put("lactating", has("lactating", "true"));
        }
        if (!value("fetusMillimetres").isEmpty()) {
            body.put("fetusMillimetres", PrivateForm.number("fetusMillimetres", value("fetusMillimetres")));
        }
    }

    /** A pound is 0.45359237 kg exactly (NIST Special Publication 811, appendix B). */
    static BigDecimal kilograms(BigDecimal pounds) {
        return pounds.multiply(new BigDecimal("0.45359237")).setScale(1, RoundingMode.HALF_UP);
    }

    /** The reading that the cues make; a cue answered "unsure" is named so. */
    ObjectNode reading(ObjectMapper json, ZoneId station) {
        ObjectNode reading = json.createObjectNode();
        reading.put("readAt", at(station));
        if (!value("jawNote").isEmpty()) {
            reading.put("note", value("jawNote"));
        }
        if (has("abnormal", "true")) {
            reading.put("abnormal", true);
        }
        OF_THE_JAW.forEach((field, name) -> {
            if (!value(field).isEmpty()) {
                reading.put(name, value(field));
            }
        });
        List<String> unsure = new ArrayList<>();
        for (KeyQuestion question : KeyQuestion.values()) {
            String answer = value("jaw." + question.field());
            if (answer.equals("UNSURE")) {
                unsure.add(question.field());
            } else if (answer.equals("CAP")) {
                under(reading, "thirdTooth").put("milkCapLoose", true);
                unsure.add(question.field());
            } else if (!answer.isEmpty()) {
                cue(reading, question.field(), answer);
            }
        }
        if (!unsure.isEmpty()) {
            ArrayNode list = reading.putArray("unsure");
            unsure.forEach(list::add);
        }
        return reading;
    }

    private static void cue(ObjectNode reading, String field, String answer) {
        int dot = field.indexOf('.');
        String name = field.substring(dot + 1);
        ObjectNode holder = dot < 0 ? reading : under(reading, field.substring(0, dot));
        if (NUMBERS.contains(name)) {
            holder.put(name, Integer.parseInt(answer));
        } else {
            holder.put(name, answer);
        }
    }

    private static ObjectNode under(ObjectNode reading, String tooth) {
        return reading.has(tooth) ? (ObjectNode) reading.get(tooth) : reading.putObject(tooth);
    }

    /** One specimen a line of scanned labels; the label's part says which tissue of which side it holds. */
    ArrayNode specimens(ObjectMapper json, ZoneId station) {
        ArrayNode specimens = json.createArrayNode();
        List<FieldProblem> problems = new ArrayList<>();
        for (String line : value("specimens").split("[\\r\\n,;]+")) {
            if (!line.isBlank()) {
                try {
                    specimens.add(specimen(json, station, LabelCode.parse(line)));
                } catch (NotACode fault) {
                    problems.add(new FieldProblem("specimens", "NOT_A_CODE", fault.getMessage()));
                } catch (InvalidInput fault) {
                    problems.addAll(fault.errors());
                }
            }
        }
        if (!problems.isEmpty()) {
            throw InvalidInput.of(problems);
        }
        return specimens;
    }

    private ObjectNode specimen(ObjectMapper json, ZoneId station, LabelCode code) {
        Promise promise = Promise.of(code.part(), value("tissue"), value("side"));
        if (promise == null) {
            throw InvalidInput.field(
                    "specimens",
                    "TISSUE_NOT_SAID",
                    "Label " + code.grouped() + " (" + code.part().label()
                            + ") does not say what it holds; choose the tissue below and scan labels of one tissue at a time");
        }
        return json.createObjectNode()
                .put("code", code.value())
                .put("tissue", promise.tissue())
                .put("side", promise.side())
                .put("preservation", typed.getOrDefault("preservation", "FRESH_CHILLED"))
                .put("condition", typed.getOrDefault("condition", "GOOD"))
                .put("collectedAt", at(station));
    }

    /** The one time of the form, on the station's clock, with its offset. */
    String at(ZoneId station) {
        try {
            return CalendarText.local(value("at"))
                    .atZone(station)
                    .toOffsetDateTime()
                    .toString();
        } catch (DateTimeParseException e) {
            throw InvalidInput.field(
                    "at",
                    "INVALID_VALUE",
                    "'" + value("at") + "' is not a time such as 2026-11-14T07:30 on the station's clock");
        }
    }

    private static boolean isCue(String field) {
        return field.startsWith("jaw.");
    }

    /** What a label promises to hold. */
    private record Promise(String tissue, String side) {
        static Promise of(Part part, String tissue, String side) {
            return switch (part) {
                case NODE_LEFT -> new Promise("MEDIAL_RETROPHARYNGEAL_NODE", "LEFT");
                case NODE_RIGHT -> new Promise("MEDIAL_RETROPHARYNGEAL_NODE", "RIGHT");
                case NODES -> new Promise("MEDIAL_RETROPHARYNGEAL_NODE", "BOTH");
                case OBEX -> new Promise("OBEX", "NONE");
                case TONSIL -> new Promise("TONSIL", side.isEmpty() ? "UNKNOWN" : side);
                case HEAD -> new Promise("WHOLE_HEAD", "NONE");
                case EAR -> new Promise("EAR", side.isEmpty() ? "UNKNOWN" : side);
                case BLOOD -> new Promise("BLOOD", "NONE");
                case LUNG -> new Promise("LUNG", side.isEmpty() ? "UNKNOWN" : side);
                case SPLEEN -> new Promise("SPLEEN", "NONE");
                case INCISOR -> new Promise("INCISOR", side.isEmpty() ? "UNKNOWN" : side);
                case FORM, STUB, BOX, SUBMISSION -> new Promise("OTHER", "NONE");
                default -> tissue.isEmpty() ? null : new Promise(tissue, side.isEmpty() ? "UNKNOWN" : side);
            };
        }
    }
}
