package org.dentary.intake;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.Map;
import org.dentary.animal.AnimalDetails;
import org.dentary.animal.AnimalFacts;
import org.dentary.animal.AnimalView;

/** The form of a deer that is there already, filled with its facts, to correct them. */
final class Correction {
    private Correction() {}

    static IntakeForm form(AnimalView animal) {
        AnimalFacts facts = animal.facts();
        Map<String, String> typed = new LinkedHashMap<>();
        typed.put("version", Integer.toString(animal.version()));
        typed.put("species", facts.species());
        typed.put("origin", facts.origin().name());
        typed.put("sex", facts.sex().name());
        typed.put("sexEvidence", facts.sexEvidence().name());
        put(typed, "diedOn", facts.diedOn());
        typed.put("diedOnPrecision", facts.diedOnPrecision().name());
        put(typed, "diedOnReason", facts.diedOnReason());
        typed.put("managementUnit", facts.unit() == null ? TakeInAnimal.UNKNOWN : facts.unit());
        typed.put("station", facts.station());
        typed.put("mortalitySource", facts.mortalitySource().name());
        put(typed, "mortalitySourceText", facts.details().mortalitySourceText());
        typed.put("collectionRoute", facts.collectionRoute().name());
        typed.put("clinicalSigns", facts.clinicalSigns().name());
        put(typed, "seenWith", facts.details().seenWith());
        typed.put("samplingBasis", facts.samplingBasis().name());
        typed.put("jawStatus", facts.jawStatus().name());
        put(typed, "jawReason", facts.jawReason());
        put(typed, "antlers", facts.details().antlers());
        put(typed, "collectionRouteText", facts.details().collectionRouteText());
        put(typed, "managementUnitReason", facts.details().managementUnitReason());
        put(typed, "mass", facts.details().fieldDressedKilograms());
        put(typed, "lactating", facts.details().lactating());
        put(typed, "fetusMillimetres", facts.details().fetusMillimetres());
        put(typed, "notes", facts.details().notes());
        if (!facts.identifiers().isEmpty()) {
            typed.put("identifierType", facts.identifiers().get(0).type());
            typed.put("identifier", facts.identifiers().get(0).value());
            put(typed, "identifierIssuer", facts.identifiers().get(0).issuer());
        }
        if (facts.enteredInError()) {
            typed.put("enteredInError", "true");
        }
        return new IntakeForm(typed);
    }

    /** Keeps what the form does not show as it is. */
    static void keep(ObjectNode body, AnimalView animal) {
        AnimalDetails details = animal.facts().details();
        if (details.antlerPoints() != null) {
            body.put("antlerPoints", details.antlerPoints());
        }
        animal.facts().identifiers().stream()
                .skip(1)
                .forEach(identifier -> body.withArray("identifiers")
                        .addObject()
                        .put("type", identifier.type())
                        .put("issuer", identifier.issuer())
                        .put("value", identifier.value()));
    }

    private static void put(Map<String, String> typed, String field, Object value) {
        if (value != null) {
            typed.put(field, value.toString());
        }
    }
}
