package org.dentary.intake;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.Map;
import java.util.TreeMap;
import org.dentary.platform.problem.InvalidInput;

/** What was typed of whom to tell and where the animal died, as the API's body has it; a part of which nothing was typed is left out. */
final class PrivateForm {
    private static final Map<String, String> OF_CONTACT = new TreeMap<>(Map.of(
            "contactName", "name",
            "contactPhone", "phone",
            "contactEmail", "email",
            "contactAddress", "address",
            "contactLanguage", "language"));
    private static final Map<String, String> OF_POINT = new TreeMap<>(Map.of(
            "pointLatitude", "latitude",
            "pointLongitude", "longitude",
            "pointUncertainty", "uncertaintyMetres"));

    private PrivateForm() {}

    /** Adds {@code contact} and {@code point} to a body, as far as something was typed of them. */
    static void add(IntakeForm form, ObjectNode body, ObjectMapper json) {
        ObjectNode contact = json.createObjectNode();
        OF_CONTACT.forEach((field, name) -> {
            if (!form.value(field).isEmpty()) {
                contact.put(name, form.value(field));
            }
        });
        if (!contact.isEmpty()) {
            contact.put("mayBeMessaged", form.has("contactMessages", "true"));
            body.set("contact", contact);
        }
        ObjectNode point = json.createObjectNode();
        OF_POINT.forEach((field, name) -> {
            if (!form.value(field).isEmpty()) {
                point.put(name, number(field, form.value(field)));
            }
        });
        if (!form.value("pointWords").isEmpty()) {
            point.put("words", form.value("pointWords"));
        }
        if (!point.isEmpty()) {
            body.set("point", point);
        }
    }

    /** The form's field for one of the API's, such as {@code contactPhone} for {@code contact.phone}; null for another. */
    static String field(String of) {
        if (of.startsWith("contact.")) {
            return of(OF_CONTACT, of.substring("contact.".length()), "contactName");
        }
        return of.startsWith("point.") ? of(OF_POINT, of.substring("point.".length()), "pointLatitude") : null;
    }

    private static String of(Map<String, String> fields, String name, String otherwise) {
        return fields.entrySet().stream()
                .filter(entry -> entry.getValue().equals(name))
                .map(Map.Entry::getKey)
                .findFirst()
                .orElse(name.equals("words") ? "pointWords" : otherwise);
    }

    /** @throws InvalidInput at the field, if it is no number; whole meters are told where they are read */
    static BigDecimal number(String field, String typed) {
        try {
            return new BigDecimal(typed);
        } catch (NumberFormatException e) {
            throw InvalidInput.field(
                    field,
                    "INVALID_VALUE",
                    "'" + typed + "' is not a number such as 45.1234, with a point and no unit");
        }
    }
}
