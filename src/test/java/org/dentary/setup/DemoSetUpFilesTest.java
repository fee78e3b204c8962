package org.dentary.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.dentary.setup.SetUpRules.Row;
import org.dentary.setup.demo.DemoSetUp;
import org.dentary.setup.list.Cell;
import org.dentary.setup.list.Known;
import org.dentary.setup.list.SetUpList;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The demo's files hold together and keep what is promised of them, without a database. */
class DemoSetUpFilesTest {
    private static final Path FOLDER = Path.of("demo-data", "setup");
    private static final Map<SetUpList, List<Row>> ROWS = new EnumMap<>(SetUpList.class);
    private static final Map<SetUpList, Set<String>> CODES = new EnumMap<>(SetUpList.class);

    @BeforeAll
    static void read() throws IOException {
        for (SetUpList list : SetUpList.values()) {
            byte[] file = Files.readAllBytes(DemoSetUp.file(FOLDER, list));
            RawTable table = SetUpFile.read(list, file);
            if (list == SetUpList.ACCOUNTS) {
                table = hashed(table);
            }
            SetUpRules.Checked checked = SetUpRules.check(list, table, Known.of(list, CODES, List.of(), Set.of()));
            assertEquals(List.of(), checked.problems(), list.path());
            assertEquals(List.of(), checked.warnings(), list.path());
            ROWS.put(list, checked.rows());
            Set<String> codes = new HashSet<>();
            checked.rows().forEach(row -> codes.add(row.cell("code")));
            CODES.put(list, codes);
        }
    }

    @Test
    void fourSeasonsFollowOneAnotherAndTheLastContainsTheDayOfTheDemo() {
        List<Row> seasons = ROWS.get(SetUpList.SEASONS);
        assertEquals(4, seasons.size());
        Row last = seasons.get(3);
        LocalDate day = LocalDate.of(2026, 11, 25);
        assertTrue(!day.isBefore(LocalDate.parse(last.cell("starts_on"))));
        assertTrue(!day.isAfter(LocalDate.parse(last.cell("ends_on"))));
        for (Row season : seasons) {
            assertEquals(
                    LocalDate.parse(season.cell("starts_on")).plusYears(1).minusDays(1),
                    LocalDate.parse(season.cell("ends_on")),
                    "a surveillance year");
        }
    }

    @Test
    void theFirstLaboratoryScreensAFreshLeftNodeByTheFirstMethod() {
        String laboratory = ROWS.get(SetUpList.LABORATORIES).get(0).cell("code");
        Row method = ROWS.get(SetUpList.METHODS).get(0);
        assertTrue(method.cell("accepted_tissues").contains("MEDIAL_RETROPHARYNGEAL_NODE"));
        assertTrue(ROWS.get(SetUpList.ACCEPTANCE).stream()
                .anyMatch(row -> row.cell("laboratory").equals(laboratory)
                        && row.cell("method").equals(method.cell("code"))
                        && row.cell("tissue").equals("MEDIAL_RETROPHARYNGEAL_NODE")
                        && row.cell("preservation").equals("FRESH_CHILLED")
                        && row.cell("side").equals("LEFT")
                        && row.cell("in_force_to").isEmpty()));
    }

    @Test
    void theSixAccountsArePeopleAndTheSamplerServesAllStations() {
        List<Row> accounts = ROWS.get(SetUpList.ACCOUNTS);
        assertEquals(
                List.of("sampler", "liaison", "epidemiologist", "coordinator", "notifier", "auditor"),
                accounts.stream().map(row -> row.cell("username")).toList());
        accounts.forEach(row -> assertTrue(!row.cell("person").isEmpty()));
        assertEquals("*", accounts.get(0).cell("stations"));
    }

    @Test
    void stationsKeepTwoTimeZonesAndEveryUnitHasABoundary() {
        assertEquals(
                2,
                ROWS.get(SetUpList.STATIONS).stream()
                        .map(row -> row.cell("time_zone"))
                        .distinct()
                        .count());
        assertEquals(CODES.get(SetUpList.UNITS), CODES.get(SetUpList.BOUNDARIES));
    }

    @Test
    void everyCautionIsReviewedAndNoneJudgesAnAnimalOrATest() {
        for (Row caution : ROWS.get(SetUpList.CAUTIONS)) {
            assertTrue(!caution.cell("reviewed_by").isEmpty());
            String text = caution.cell("text").toLowerCase(java.util.Locale.ROOT);
            assertTrue(!text.matches("(?s).*\\b(negative|clean|safe)\\b.*"), caution.cell("code") + " judges: " + text);
        }
    }

    private static RawTable hashed(RawTable table) {
        int column = table.header().indexOf("password");
        return new RawTable(
                table.header(),
                table.lines().stream()
                        .map(line -> {
                            var cells = new java.util.ArrayList<>(line.cells());
                            assertEquals("demo", cells.set(column, Cell.HASHED));
                            return new RawTable.Line(line.number(), cells);
                        })
                        .toList());
    }
}
