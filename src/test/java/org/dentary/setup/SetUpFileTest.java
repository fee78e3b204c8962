package org.dentary.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.table.CsvTable;
import org.dentary.setup.list.SetUpList;
import org.junit.jupiter.api.Test;

class SetUpFileTest {
    @Test
    void aByteOrderMarkAndCapitalsInTheHeaderAreTolerated() {
        RawTable table = read("\uFEFFCode,Name\r\nA,Älv\r\n");
        assertEquals(List.of("code", "name"), table.header());
        assertEquals(List.of("A", "Älv"), table.lines().get(0).cells());
    }

    @Test
    void linesAreNumberedAsInTheFile() {
        // RFC 4180, section 2, rule 6: a quoted field may hold line breaks; a line's number is where it starts
        RawTable table = read("code,name\nA,\"two\nlines\"\n\nB,b\n");
        assertEquals(2, table.lines().get(0).number());
        assertEquals("two\nlines", table.lines().get(0).cells().get(1));
        assertEquals(5, table.lines().get(1).number());
    }

    @Test
    void quotesAreReadByRfc4180() {
        // RFC 4180, section 2, rule 7: a quote within a quoted field is doubled
        assertEquals(
                "say \"aah\", deer",
                read("code,name\nA,\"say \"\"aah\"\", deer\"\n")
                        .lines()
                        .get(0)
                        .cells()
                        .get(1));
    }

    @Test
    void whatOurOwnFilesGuardComesBackAsItWas() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (CsvTable table = CsvTable.on(out, List.of("code", "name"))) {
            table.row("A", "+1 555 0100").row("B", "=later");
        }
        RawTable table = SetUpFile.read(SetUpList.DISEASES, out.toByteArray());
        assertEquals("+1 555 0100", table.lines().get(0).cells().get(1));
        assertEquals("=later", table.lines().get(1).cells().get(1));
    }

    @Test
    void anotherCharacterSetIsRefusedWithTheLine() {
        byte[] western = "code,name\nA,plain\nB,Älv\n".getBytes(Charset.forName("windows-1252"));
        InvalidInput refusal = assertThrows(InvalidInput.class, () -> SetUpFile.read(SetUpList.DISEASES, western));
        assertEquals("CHARACTER_SET", refusal.code());
        assertTrue(refusal.getMessage().contains("line 3"), refusal.getMessage());
        byte[] wide = "code,name\nA,a\n".getBytes(StandardCharsets.UTF_16);
        refusal = assertThrows(InvalidInput.class, () -> SetUpFile.read(SetUpList.DISEASES, wide));
        assertTrue(refusal.getMessage().contains("UTF-16"), refusal.getMessage());
    }

    @Test
    void anotherSeparatorAnEmptyFileAndOpenQuotesAreRefused() {
        assertEquals("SEPARATOR", refusal("code;name\nA;a\n"));
        assertEquals("SEPARATOR", refusal("code\tname\nA\ta\n"));
        assertEquals("FILE_EMPTY", refusal(""));
        assertEquals("FILE_EMPTY", refusal(" \n \n"));
        assertEquals("FILE_NOT_CSV", refusal("code,name\nA,\"open\nB,b\n"));
        assertEquals("FILE_NOT_CSV", refusal("{\"type\":\"FeatureCollection\",\"features\":[]}"));
    }

    @Test
    void featuresBecomeLines() {
        RawTable table = SetUpFile.read(
                SetUpList.BOUNDARIES,
                "{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"properties\":{\"code\":\"U1\"},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[]}}]}"
                        .getBytes(StandardCharsets.UTF_8));
        assertEquals("U1", table.lines().get(0).cells().get(0));
        assertEquals("1", table.lines().get(0).cells().get(2));
        assertEquals(2, table.lines().get(0).number());
    }

    /** RFC 7946, section 4: WGS 84 alone; the member crs is of the specification of 2008, section 3. */
    @Test
    void boundariesInAnotherCoordinateReferenceSystemAreRefused() {
        byte[] file = """
                {"crs": {"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::26915"}},
                 "type": "FeatureCollection",
                 "features": [{"type": "Feature", "properties": {"code": "U1"}, "geometry": {"type": "Polygon",
                     "coordinates": [[[100.0, 0.0], [101.0, 0.0], [101.0, 1.0], [100.0, 1.0], [100.0, 0.0]]]}}]}
                """.getBytes(StandardCharsets.UTF_8);
        InvalidInput refusal = assertThrows(InvalidInput.class, () -> SetUpFile.read(SetUpList.BOUNDARIES, file));
        assertEquals("NOT_WGS_84", refusal.code());
    }

    private static String refusal(String text) {
        return assertThrows(InvalidInput.class, () -> read(text)).code();
    }

    private static RawTable read(String text) {
        return SetUpFile.read(SetUpList.DISEASES, text.getBytes(StandardCharsets.UTF_8));
    }
}
