package org.dentary.result.imports.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ca.uhn.hl7v2.DefaultHapiContext;
import ca.uhn.hl7v2.HapiContext;
import ca.uhn.hl7v2.parser.CanonicalModelClassFactory;
import ca.uhn.hl7v2.validation.impl.ValidationContextFactory;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.dentary.plan.LaboratoryView;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.result.mapping.CodeMap;
import org.dentary.result.mapping.CodeMaps;
import org.junit.jupiter.api.Test;

/**
 * Orders on several specimens. HL7 v2.5.1, chapter 7, lets the SPECIMEN group of an {@code ORU^R01} repeat in an order; each
 * message here passes the strict validation of HAPI first.
 */
class Hl7ReaderTest {
    private static final LocalDate TODAY = LocalDate.of(2025, 11, 25);
    private static final List<LaboratoryView> LABORATORIES = List.of(
            new LaboratoryView("T_LAB", "Test laboratory", null, null, null),
            new LaboratoryView("T_REF", "Reference Hall", null, null, null));

    @Test
    void anOrderOnBothNodesIsOneFindingOnBoth() throws Exception {
        ImportRow row = only(message("", "SPM|1|A111-1111-11||LN^Lymph node^L", "SPM|2|B222-2222-22||LN^Lymph node^L"));
        assertEquals("A111-1111-11+B222-2222-22", row.specimens());
        assertEquals("MEDIAL_RETROPHARYNGEAL_NODE", row.tissue());
    }

    @Test
    void tissueCalledByTwoNamesIsNotHeldAgainstEither() throws Exception {
        ImportRow row = only(message("", "SPM|1|A111-1111-11||LN^Lymph node^L", "SPM|2|B222-2222-22||BS^Brain stem^L"));
        assertEquals("A111-1111-11+B222-2222-22", row.specimens());
        assertNull(row.tissue());
    }

    @Test
    void oneSpecimenWithoutACodeLeavesTheRowWithoutAny() throws Exception {
        assertNull(only(message("", "SPM|1|A111-1111-11||LN^Lymph node^L", "SPM|2|||LN^Lymph node^L"))
                .specimens());
    }

    /** Components as HL7 v2.5.1 has them in XON: 1 name, 3 number of older versions, 6 who assigned it, 10 identifier. */
    @Test
    void thePerformingLaboratoryIsKnownByItsIdentifier() throws Exception {
        assertEquals("T_REF", performing(Map.of(), "Reference Hall^L^^^^TV&2.999.1&ISO^XX^^^T_REF"));
        assertEquals("77", performing(Map.of(), "Reference Hall^L^77"), "not by name where an identifier is given");
        assertEquals("T_REF", performing(Map.of(), "reference hall"));
        assertEquals("T_REF", performing(Map.of(), "t_ref"));
        assertEquals("Nowhere", performing(Map.of(), "Nowhere"));
        assertNull(performing(Map.of(), ""));
        Map<String, String> mapped = Map.of("14^TV", "T_REF", "77", "T_LAB");
        assertEquals("T_REF", performing(mapped, "any name^L^^^^TV&2.999.1&ISO^XX^^^14"));
        assertEquals("T_LAB", performing(mapped, "any name^L^77^^^OTHER"));
        assertEquals("T_REF", performing(Map.of("14^2.999.1", "T_REF"), "any name^L^^^^&2.999.1&ISO^XX^^^14"));
        assertEquals("T_LAB", performing(Map.of("14^TV", "T_LAB"), "any name^L^15^^^TV&2.999.1&ISO^XX^^^14"));
    }

    @Test
    void aPerformingLaboratoryThatTheMapDoesNotKnowIsAFaultOfItsRow() throws Exception {
        ImportFile file = read(Map.of("OBX-23", Map.of("14^TV", "T_REF")), performed("Hall^L^^^^ELSE^XX^^^14"));
        assertNull(file.rows().get(0).performingLaboratory());
        assertEquals(1, file.problems().size());
        assertEquals("performing_laboratory", file.problems().get(0).field());
        assertEquals("CODE_UNKNOWN", file.problems().get(0).rule());
        assertTrue(file.problems().get(0).message().contains("OBX-23 says '14^ELSE'"), file.toString());
    }

    /** HL7 v2.5.1, 2.10.3: BHS begins a batch, BTS ends it and says in its first field how many messages it holds. */
    @Test
    void aBatchThatLostAMessageOrItsEndIsRefused() throws Exception {
        String one = new String(message("", "SPM|1|A111-1111-11||LN^Lymph node^L"), StandardCharsets.UTF_8);
        String head = "FHS|^~\\&|LIMS\rBHS|^~\\&|LIMS\r";
        assertEquals(
                2,
                read(Map.of(), bytes(head + one + one.replace("|C1|", "|C2|") + "BTS|2\rFTS|1\r"))
                        .rows()
                        .size());
        assertEquals(
                1,
                read(Map.of(), bytes(head + one + "BTS||no count\rFTS|1\r"))
                        .rows()
                        .size());
        assertTrue(refusal(head + one + "BTS|2\rFTS|1\r").contains("2 messages (BTS-1), and 1 were found"));
        assertTrue(refusal(head + one).contains("does not end (BTS)"));
    }

    /** MSH-18 and its codes: HL7 v2.5.1, 2.14.9.18 and table 0211. */
    @Test
    void theFileIsReadInTheCharacterSetThatItNames() throws Exception {
        String measured = new String(
                message("\rNTE|1||0.4 \u00b5g", "SPM|1|A111-1111-11||LN^Lymph node^L"), StandardCharsets.UTF_8);
        assertEquals("0.4 \u00b5g", value(measured.getBytes(StandardCharsets.UTF_8)));
        String latin = measured.replace("|P|2.5.1", "|P|2.5.1||||||8859/1");
        assertEquals("0.4 \u00b5g", value(latin.getBytes(StandardCharsets.ISO_8859_1)));
        for (byte[] wrong : List.of(
                measured.getBytes(StandardCharsets.ISO_8859_1),
                latin.replace("8859/1", "BIG-5").getBytes(StandardCharsets.UTF_8))) {
            InvalidInput refusal = assertThrows(InvalidInput.class, () -> read(Map.of(), wrong));
            assertEquals("WRONG_CHARACTER_SET", refusal.code());
            assertTrue(refusal.getMessage().contains("MSH-18"), refusal.getMessage());
        }
    }

    private static String value(byte[] file) {
        return read(Map.of(), file).rows().get(0).measuredValue();
    }

    /** OBX-11 is required (HL7 v2.5.1, 7.4.2.11): a result of unknown status is not taken for a final one. */
    @Test
    void aResultWithoutItsStatusIsAFault() throws Exception {
        String message = new String(message("", "SPM|1|A111-1111-11||LN^Lymph node^L"), StandardCharsets.UTF_8)
                .replace("||||||F|||20251120", "|||||||||20251120");
        assertTrue(message.contains("NOT_DETECTED|||||||||20251120"), message);
        List<RowProblem> problems =
                RowRules.check(read(Map.of(), bytes(message)), TODAY).problems();
        assertEquals(
                List.of("status REQUIRED"),
                problems.stream()
                        .filter(problem -> problem.field().equals("status"))
                        .map(problem -> problem.field() + " " + problem.rule())
                        .toList());
    }

    @Test
    void whatIsBrokenIsToldInWordsOfTheMessage() throws Exception {
        String one = new String(message("", "SPM|1|A111-1111-11||LN^Lymph node^L"), StandardCharsets.UTF_8);
        for (String broken : List.of(
                "MSH|^~\r",
                one.replace("20251121120000||ORU", "00000000||ORU"),
                one.replace("20251121120000||ORU", "99999999||ORU"),
                one.replace("^~\\&", "||||"),
                one.substring(0, 45),
                one.replace("|P|2.5.1", "|P|9.9"))) {
            String told = refusal(broken);
            assertTrue(!told.matches("(?s).*(Exception|ca\\.uhn|parsed|null).*"), told);
        }
    }

    private static String refusal(String file) {
        return assertThrows(InvalidInput.class, () -> read(Map.of(), bytes(file)))
                .getMessage();
    }

    private static byte[] bytes(String file) {
        return file.getBytes(StandardCharsets.UTF_8);
    }

    private static String performing(Map<String, String> map, String organization) throws Exception {
        ImportFile file = read(map.isEmpty() ? Map.of() : Map.of("OBX-23", map), performed(organization));
        assertEquals(List.of(), file.problems());
        return file.rows().get(0).performingLaboratory();
    }

    private static byte[] performed(String organization) throws Exception {
        return message("|||||||||" + organization, "SPM|1|A111-1111-11||LN^Lymph node^L");
    }

    private static ImportFile read(Map<String, Map<String, String>> codes, byte[] message) {
        var map = new CodeMap(LocalDate.of(2025, 9, 1), codes);
        return Hl7Reader.read(
                message, List.of(new CodeMaps.Edition("LAB", 1, map, "T_LIAISON", Instant.EPOCH)), LABORATORIES, TODAY);
    }

    private static ImportRow only(byte[] message) {
        Map<String, Map<String, String>> codes =
                Map.of("SPM-4", Map.of("LN^L", "MEDIAL_RETROPHARYNGEAL_NODE", "BS^L", "OBEX"));
        List<ImportRow> rows = read(codes, message).rows();
        assertEquals(1, rows.size());
        return rows.get(0);
    }

    /** @param rest what follows the day of the test (OBX-14) */
    private static byte[] message(String rest, String... specimens) throws Exception {
        String message = String.join(
                        "\r",
                        "MSH|^~\\&|LIMS|LAB|DENTARY|AGENCY|20251121120000||ORU^R01^ORU_R01|C1|P|2.5.1",
                        "PID|1||A111-1111-11||^unknown",
                        "OBR|1|A111-1111-11|H-1^LAB|PRION^Prion screening^L||||||||||||||||||20251121120000|||F",
                        "OBX|1|CWE|SCREENING||NOT_DETECTED||||||F|||20251120" + rest,
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
