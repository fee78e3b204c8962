package org.dentary.result.mapping;

import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;

/**
 * What one laboratory's codes in HL7 messages mean. A code is written as in the message, {@code 260415000^SCT}: identifier
 * and coding system (CWE.1 and CWE.3); without a system it stands for every system.
 *
 * @param inForceFrom first day (MSH-7) of the messages that it is for
 * @param codes field ({@code OBX-3} stage, {@code OBX-5} finding, {@code OBX-8} reason, {@code OBX-17} and {@code OBR-4}
 *     test method, {@code OBX-23} performing laboratory, {@code SPM-4} tissue) to the laboratory's codes and our words; a field that is not in it is in our own
 *     words
 */
public record CodeMap(
        @NotNull(message = "is required: the day from which messages are in these codes")
        LocalDate inForceFrom,

        @NotNull(message = "is required: fields, the laboratory's codes and our words")
        @Size(min = 1, max = 10, message = "names at least one field")
        @JsonSetter(contentNulls = Nulls.FAIL)
        Map<String, Map<String, String>> codes) {
    public CodeMap {
        codes = codes == null ? null : Map.copyOf(codes);
    }

    public boolean speaksOf(String field) {
        return codes.containsKey(field);
    }

    /** Our word, by code and system first, then by the code alone. */
    public Optional<String> word(String field, String code, String system) {
        Map<String, String> of = codes.getOrDefault(field, Map.of());
        return Optional.ofNullable(of.getOrDefault(system == null ? code : code + "^" + system, of.get(code)));
    }
}
