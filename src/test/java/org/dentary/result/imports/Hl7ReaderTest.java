package org.dentary.result.imports;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import ca.uhn.hl7v2.DefaultHapiContext;
import ca.uhn.hl7v2.HapiContext;
import ca.uhn.hl7v2.parser.CanonicalModelClassFactory;
import ca.uhn.hl7v2.validation.impl.ValidationContextFactory;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Orders on several specimens. HL7 v2.5.1, chapter 7, lets the SPECIMEN group of an {@code ORU^R01} repeat in an order; each
 * message here passes the strict validation of HAPI first.
 */
class Hl7ReaderTest {
    private static final LocalDate TODAY = LocalDate.of(2025, 11, 25);

    @Test
    void anOrderOnBothNodesIsOneFindingOnBoth() throws Exception {
        ImportRow row = only(message("SPM|1|A111-1111-11||LN^Lymph node^L", "SPM|2|B222-2222-22||LN^Lymph node^L"));
        assertEquals("A111-1111-11+B222-2222-22", row.specimens());
        assertEquals("MEDIAL_RETROPHARYNGEAL_NODE", row.tissue());
    }

    @Test
    void tissueCalledByTwoNamesIsNotHeldAgainstEither() throws Exception {
        ImportRow row = only(message("SPM|1|A111-1111-11||LN^Lymph node^L", "SPM|2|B222-2222-22||BS^Brain stem^L"));
        assertEquals("A111-1111-11+B222-2222-22", row.specimens());
        assertNull(row.tissue());
    }

    @Test
    void oneSpecimenWithoutACodeLeavesTheRowWithoutAny() throws Exception {
        assertNull(only(message("SPM|1|A111-1111-11||LN^Lymph node^L", "SPM|2|||LN^Lymph node^L"))
                .specimens());
    }

    private static ImportRow only(byte[] message) {
        var map = new CodeMap(
                LocalDate.of(2025, 9, 1),
                Map.of("SPM-4", Map.of("LN^L", "MEDIAL_RETROPHARYNGEAL_NODE", "BS^L", "OBEX")));
        List<ImportRow> rows = Hl7Reader.read(
                        message, List.of(new CodeMaps.Edition("LAB", 1, map, "T_LIAISON", Instant.EPOCH)), TODAY)
                .rows();
        assertEquals(1, rows.size());
        return rows.get(0);
    }

    private static byte[] message(String... specimens) throws Exception {
        String message = String.join(
                        "\r",
                        "MSH|^~\\&|LIMS|LAB|DENTARY|AGENCY|20251121120000||ORU^R01^ORU_R01|C1|P|2.5.1",
                        "PID|1||A111-1111-11||^unknown",
                        "OBR|1|A111-1111-11|H-1^LAB|PRION^Prion screening^L||||||||||||||||||20251121120000|||F",
                        "OBX|1|CWE|SCREENING||NOT_DETECTED||||||F|||20251120",
                        String.join("\r", specimens))
                + "\r";
        try (HapiContext hapi = new DefaultHapiContext()) {
            hapi.setModelClassFactory(new CanonicalModelClassFactory("2.5.1"));
            hapi.setValidationContext(ValidationContextFactory.defaultValidation());
            hapi.getPipeParser().parse(message);
        }
        return message.getBytes(StandardCharsets.UTF_8);
    }
}
