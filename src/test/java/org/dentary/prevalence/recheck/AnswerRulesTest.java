package org.dentary.prevalence.recheck;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import org.dentary.prevalence.recheck.AnswerRules.Moved;
import org.junit.jupiter.api.Test;

class AnswerRulesTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    private static List<Moved> moved(String stored, String computed) throws JsonProcessingException {
        return AnswerRules.moved(JSON.readTree(stored), JSON.readTree(computed));
    }

    @Test
    void equalNumbersInOtherFormsHaveNotMoved() throws JsonProcessingException {
        assertEquals(List.of(), moved("{\"a\":0.25,\"b\":1e-3,\"c\":null}", "{\"c\":null,\"b\":0.001,\"a\":0.250}"));
    }

    @Test
    void aNumberThatDiffersIsNamedByTheWordsOfItsRow() throws JsonProcessingException {
        assertEquals(
                List.of(new Moved("cells: ADULT, MALE: counted", "7", "8")),
                moved(
                        "{\"cells\":[{\"ageClass\":\"ADULT\",\"counted\":7,\"sex\":\"MALE\"}]}",
                        "{\"cells\":[{\"ageClass\":\"FAWN\",\"counted\":7,\"sex\":\"MALE\"},"
                                + "{\"ageClass\":\"ADULT\",\"counted\":8,\"sex\":\"MALE\"}]}"));
    }

    @Test
    void theLastBitOfALimitCounts() throws JsonProcessingException {
        assertEquals(
                1,
                moved("{\"upper\":0.36620000000000014}", "{\"upper\":0.3662}").size());
    }

    @Test
    void nullThatBecameANumberAndANumberThatWentHaveMoved() throws JsonProcessingException {
        assertEquals(
                List.of(new Moved("upper", null, "0.5"), new Moved("lower", "0.5", null)),
                moved("{\"upper\":null,\"lower\":0.5}", "{\"upper\":0.5}"));
    }

    @Test
    void otherWordsAndNewNumbersHaveNotMoved() throws JsonProcessingException {
        assertEquals(
                List.of(), moved("{\"notes\":[\"old\"],\"n\":1}", "{\"notes\":[\"new words\"],\"n\":1,\"more\":2}"));
    }

    @Test
    void wordsAboutARowDoNotMoveItsNumbersAndRowsAlikeStayApart() throws JsonProcessingException {
        String stored = "{\"units\":[{\"unit\":\"U1\",\"sentence\":\"Not detected in 9.\",\"tested\":9}],"
                + "\"rows\":[{\"kind\":\"TREND\",\"n\":1},{\"kind\":\"TREND\",\"n\":2}]}";
        assertEquals(List.of(), moved(stored, stored.replace("Not detected in 9.", "None in 9, as of Nov 1.")));
        assertEquals(
                List.of(new Moved("units: U1: tested", "9", "8")),
                moved(stored, stored.replace("tested\":9", "tested\":8")));
        assertEquals(
                List.of(new Moved("rows: TREND: n", "1", "3")), moved(stored, stored.replace("\"n\":1", "\"n\":3")));
        String table = "kind,p,sentence\r\nTREND,0.04,\"Shown, as of 2026\"\r\n";
        assertEquals(List.of(), AnswerRules.movedCsv(table, table.replace("as of 2026", "in 2026")));
        assertEquals(
                1, AnswerRules.movedCsv(table, table.replace("0.04", "0.05")).size());
    }

    @Test
    void tablesAreComparedLineByLine() {
        assertEquals(
                List.of(new Moved("line 2", "ADULT,7", "ADULT,8"), new Moved("line 3", null, "FAWN,1")),
                AnswerRules.movedCsv("a,b\r\nADULT,7\r\n", "a,b\r\nADULT,8\r\nFAWN,1\r\n"));
    }

    @Test
    void aColumnThatALaterReleaseAddsIsNewAndOneThatItDropsIsMoved() {
        String stored = "ageClass,pending,flags\r\nADULT,4,\r\n\"a, b\",1,\r\n";
        String wider = "ageClass,pending,pendingShare,flags\r\nADULT,4,0.5,\r\n\"a, b\",1,,\r\n";
        assertEquals(List.of(), AnswerRules.movedCsv(stored, wider));
        assertEquals(
                1,
                AnswerRules.movedCsv(stored, wider.replace("ADULT,4", "ADULT,5"))
                        .size());
        assertEquals(3, AnswerRules.movedCsv(wider, stored).size());
    }
}
