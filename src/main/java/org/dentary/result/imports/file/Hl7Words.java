package org.dentary.result.imports.file;

import ca.uhn.hl7v2.model.v251.datatype.XON;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.dentary.plan.LaboratoryView;
import org.dentary.result.mapping.CodeMaps;

/**
 * Codes of one row in our words; a code that the map in force should know and does not is a fault of the row.
 *
 * @param edition of the laboratory's code map, or null
 * @param laboratories of the plan
 */
record Hl7Words(
        CodeMaps.Edition edition, Collection<LaboratoryView> laboratories, int line, List<RowProblem> problems) {
    private static final String PERFORMING = "OBX-23";

    boolean mapped(String field) {
        return edition != null && edition.map().speaksOf(field);
    }

    /**
     * Our word.
     *
     * @param encoded as in the message: identifier^text^system
     */
    String of(String field, String column, String encoded) {
        String[] parts = encoded.split("\\^", -1);
        String code = Hl7Reader.empty(parts[0]);
        return code == null || !mapped(field)
                ? code
                : word(field, column, code, parts.length > 2 ? Hl7Reader.empty(parts[2]) : null);
    }

    /**
     * The code of the laboratory that made the test (OBX-23). It is known by its identifier, XON.10, or XON.3 where only
     * the number of older versions is sent, with who assigned it (XON.6: namespace, else universal id): by the code map
     * where that names the field, else as one of the plan's codes. Without an identifier its name (XON.1) is held against
     * the plan's codes and names. What is not known stays as it was given, for the checks to refuse.
     *
     * <p>Source: HL7 v2.5.1 chapter 2A, data type XON; component numbers as HAPI's model of that version has them.
     */
    String laboratory(XON organization) {
        String identifier = Optional.ofNullable(
                        Hl7Reader.empty(organization.getOrganizationIdentifier().getValue()))
                .orElse(Hl7Reader.empty(organization.getIDNumber().getValue()));
        String name = Hl7Reader.empty(organization.getOrganizationName().getValue());
        if (identifier == null && name == null) {
            return null;
        }
        if (mapped(PERFORMING)) {
            return word(PERFORMING, "performing_laboratory", identifier == null ? name : identifier, by(organization));
        }
        return identifier == null ? named(name) : identifier;
    }

    private static String by(XON organization) {
        return Optional.ofNullable(Hl7Reader.empty(
                        organization.getAssigningAuthority().getNamespaceID().getValue()))
                .orElse(Hl7Reader.empty(
                        organization.getAssigningAuthority().getUniversalID().getValue()));
    }

    private String named(String name) {
        return laboratories.stream()
                .filter(one -> one.code().equalsIgnoreCase(name) || one.name().equalsIgnoreCase(name))
                .map(LaboratoryView::code)
                .findFirst()
                .orElse(name);
    }

    private String word(String field, String column, String code, String system) {
        Optional<String> word = edition.map().word(field, code, system);
        if (word.isEmpty()) {
            problems.add(new RowProblem(
                    line,
                    column,
                    "CODE_UNKNOWN",
                    field + " says '" + code + (system == null ? "" : "^" + system) + "', which edition "
                            + edition.edition() + " of the laboratory's code map does not know; ask the laboratory"
                            + " what it means, keep the next edition under Laboratories' HL7 codes, and send the"
                            + " file again under an id of its own"));
        }
        return word.orElse(null);
    }
}
