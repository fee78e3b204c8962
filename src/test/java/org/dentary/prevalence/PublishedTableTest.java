package org.dentary.prevalence;

import static org.dentary.intake.IntakeFixture.as;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture.ALine;
import org.dentary.prevalence.detection.ChanceFixture;
import org.junit.jupiter.api.Test;

/**
 * Published tables of wild animals counted and detected, entered as so many animals: the report gives the percentages and the
 * limits that were printed, to the one decimal in which they were printed.
 */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class PublishedTableTest {
    /** A digit in the second decimal: some limits were printed a hundredth off. */
    private static final double PRINTED_FINELY = 0.0151;

    /** Half of the last digit that is printed, and of the next where a table was rounded twice (0 of 3: 56.1497 as 56.2). */
    private static final double PRINTED = 0.0551;

    /**
     * Pedersen et al. 2017, Am J Trop Med Hyg 97:319-323, doi 10.4269/ajtmh.17-0180, Table 1: antibodies to La Crosse virus
     * in white-tailed deer by state; n, percent, 95 % limits. The number detected is the percentage of n, a whole number in
     * every row. The paper's table names no method; its limits, such as 0 to 32.4 for none of 8, are Wilson's score.
     */
    private static final List<Row> DEER_BY_STATE = List.of(
            new Row(197, 69, 35.0, 28.7, 41.9), // Alabama
            new Row(42, 19, 45.2, 31.2, 60.1), // Florida
            new Row(88, 10, 11.4, 6.3, 19.7), // Georgia
            new Row(43, 5, 11.6, 5.1, 24.5), // Illinois
            new Row(45, 13, 28.9, 17.7, 43.4), // Indiana
            new Row(8, 0, 0, 0, 32.4), // Kentucky
            new Row(75, 39, 52.0, 40.9, 62.9), // Louisiana
            new Row(3, 2, 66.7, 20.8, 93.9), // Maine
            new Row(227, 85, 37.4, 31.4, 43.9), // Michigan
            new Row(237, 69, 29.1, 23.7, 35.2), // Minnesota
            new Row(32, 19, 59.4, 42.3, 74.5), // Mississippi
            new Row(178, 47, 26.4, 20.5, 33.3)); // New Jersey

    /** The same table, eastern equine encephalitis virus: a rare finding, most limits close to none. */
    private static final List<Row> RARE_BY_STATE = List.of(
            new Row(197, 5, 2.5, 1.1, 5.8), // Alabama
            new Row(42, 5, 11.9, 5.2, 25.0), // Florida
            new Row(88, 1, 1.1, 0.2, 6.2), // Georgia
            new Row(43, 0, 0, 0, 8.2), // Illinois
            new Row(45, 1, 2.2, 0.4, 11.6), // Indiana
            new Row(75, 3, 4.0, 1.4, 11.1), // Louisiana
            new Row(3, 0, 0, 0, 56.2), // Maine
            new Row(227, 3, 1.3, 0.5, 3.8), // Michigan
            new Row(237, 4, 1.7, 0.7, 4.3), // Minnesota
            new Row(32, 1, 3.1, 0.6, 15.7), // Mississippi
            new Row(178, 6, 3.4, 1.6, 7.2)); // New Jersey

    /**
     * Frontiers in Veterinary Science 2018, 5:262, doi 10.3389/fvets.2018.00262, Table 5: badgers with bovine tuberculosis,
     * found by chance and looked for, in two periods; detected/analyzed, percent, 95 % limits (Clopper-Pearson's: binom.test
     * of R 4.2.2 gives the same).
     */
    private static final Map<String, List<Row>> BADGERS_BY_PERIOD = Map.of(
            "2013-2014", List.of(new Row(134, 11, 8.2, 4.2, 14.2), new Row(805, 22, 2.7, 1.7, 4.1)),
            "2016-2017", List.of(new Row(365, 35, 9.6, 6.8, 13.1), new Row(1143, 61, 5.3, 4.1, 6.8)));

    /**
     * Parasites & Vectors 2023, doi 10.1186/s13071-023-05830-0, Table 5: lungs of red foxes with the nematode Eucoleus
     * aerophilus, by country and sex; n, percent, 95 % limits to two decimals. The number detected is the percentage of n, a
     * whole number in every row. Left out are the rows whose limits are not Wilson's score (Romania's females, the smaller
     * study of Spain) or hold a slip of the pen (Denmark's females, 77.28 for 77.82).
     */
    private static final List<Map<String, Row>> FOXES_BY_COUNTRY = List.of(
            Map.of(
                    "MALE",
                    new Row(111, 99, 89.19, 82.05, 93.71),
                    "FEMALE",
                    new Row(70, 61, 87.14, 77.33, 93.08)), // Norway
            Map.of(
                    "MALE",
                    new Row(123, 90, 73.17, 64.73, 80.21),
                    "FEMALE",
                    new Row(98, 64, 65.31, 55.47, 73.99)), // Bosnia
            Map.of(
                    "MALE",
                    new Row(149, 51, 34.23, 27.09, 42.16),
                    "FEMALE",
                    new Row(108, 35, 32.41, 24.32, 41.71)), // Spain
            Map.of(
                    "MALE",
                    new Row(143, 87, 60.84, 52.66, 68.46),
                    "FEMALE",
                    new Row(128, 52, 40.63, 32.52, 49.29))); // UK

    /**
     * Report on the loss of the Titanic (Board of Trade, London 1912, Cd. 6352): passengers saved by class, age class and sex,
     * with percentages (from memory, to two decimals). The counts are R's data set {@code Titanic} (Dawson 1995, Journal of
     * Statistics Education 3:3); the report prints no limits, so they are of {@code prop.test(x, n, correct = FALSE)}, R 4.2.2.
     * It stands here because no table of wild animals by age class and sex could be read with its counts.
     */
    private static final List<Map<String, Row>> PASSENGERS_BY_CLASS = List.of(
            Map.of(
                    "FAWN MALE", new Row(5, 5, 100, 56.5518, 100),
                    "ADULT MALE", new Row(175, 57, 32.57, 26.0672, 39.8244),
                    "FAWN FEMALE", new Row(1, 1, 100, 20.6549, 100),
                    "ADULT FEMALE", new Row(144, 140, 97.22, 93.0758, 98.9146)),
            Map.of(
                    "FAWN MALE", new Row(11, 11, 100, 74.1167, 100),
                    "ADULT MALE", new Row(168, 14, 8.33, 5.0287, 13.5008),
                    "FAWN FEMALE", new Row(13, 13, 100, 77.1905, 100),
                    "ADULT FEMALE", new Row(93, 80, 86.02, 77.5400, 91.6453)),
            Map.of(
                    "FAWN MALE", new Row(48, 13, 27.08, 16.5660, 40.9970),
                    "ADULT MALE", new Row(462, 75, 16.23, 13.1520, 19.8724),
                    "FAWN FEMALE", new Row(31, 14, 45.16, 29.1617, 62.2278),
                    "ADULT FEMALE", new Row(165, 76, 46.06, 38.6313, 53.6692)));

    /** A row as it was printed; shares in percent. */
    private record Row(int counted, int detected, double percent, double lower, double upper) {}

    @Inject
    LineFixture lines;

    @Inject
    ChanceFixture plan;

    @Test
    void deerByStateHaveTheirPublishedLimits() {
        for (List<Row> table : List.of(DEER_BY_STATE, RARE_BY_STATE)) {
            String season = lines.season();
            List<String> units = new ArrayList<>();
            for (Row row : table) {
                String unit = plan.unit();
                units.add(unit);
                add(season, row, ALine.of("ADULT", "FEMALE", "NOT_DETECTED").in(unit));
            }
            JsonPath report = report(season, "by=managementUnit&unit=" + String.join(",", units));
            for (int i = 0; i < units.size(); i++) {
                same(table.get(i), report, "managementUnit", units.get(i));
            }
        }
    }

    @Test
    void badgersByHowTheyWereFoundHaveTheirPublishedLimits() {
        BADGERS_BY_PERIOD.forEach((period, table) -> {
            String season = lines.season();
            List<String> sources = List.of("FOUND_DEAD", "AGENCY_REMOVAL");
            for (int i = 0; i < table.size(); i++) {
                add(
                        season,
                        table.get(i),
                        ALine.of("ADULT", "MALE", "NOT_DETECTED").from(sources.get(i)));
            }
            JsonPath report = report(
                    season, "by=mortalitySource&interval=CLOPPER_PEARSON&mortalitySource=" + String.join(",", sources));
            for (int i = 0; i < table.size(); i++) {
                same(table.get(i), report, "mortalitySource", sources.get(i));
            }
        });
    }

    @Test
    void foxesBySexHaveTheirPublishedLimits() {
        String season = lines.season();
        List<String> units = new ArrayList<>();
        for (Map<String, Row> table : FOXES_BY_COUNTRY) {
            String unit = plan.unit();
            units.add(unit);
            table.forEach((sex, row) ->
                    add(season, row, ALine.of("ADULT", sex, "NOT_DETECTED").in(unit)));
        }
        JsonPath report = report(season, "by=managementUnit,sex&unit=" + String.join(",", units));
        for (int i = 0; i < units.size(); i++) {
            for (Map.Entry<String, Row> entry : FOXES_BY_COUNTRY.get(i).entrySet()) {
                same(
                        entry.getValue(),
                        report.getMap("cells.find { it.managementUnit == '" + units.get(i) + "' && it.sex == '"
                                + entry.getKey() + "' }"),
                        entry.getKey(),
                        PRINTED_FINELY);
            }
        }
    }

    @Test
    void passengersByAgeClassAndSexHaveTheirPublishedPercentages() {
        String season = lines.season();
        List<String> units = new ArrayList<>();
        for (Map<String, Row> table : PASSENGERS_BY_CLASS) {
            String unit = plan.unit();
            units.add(unit);
            table.forEach((who, row) -> {
                String[] words = who.split(" ");
                add(season, row, ALine.of(words[0], words[1], "NOT_DETECTED").in(unit));
            });
        }
        JsonPath all = report(season, "by=managementUnit,ageClass,sex&unit=" + String.join(",", units));
        for (int i = 0; i < units.size(); i++) {
            JsonPath alone = report(season, "by=ageClass,sex&unit=" + units.get(i));
            for (Map.Entry<String, Row> entry : PASSENGERS_BY_CLASS.get(i).entrySet()) {
                String[] words = entry.getKey().split(" ");
                String cell = "cells.find { it.ageClass == '" + words[0] + "' && it.sex == '" + words[1] + "'";
                same(entry.getValue(), alone.getMap(cell + " }"), entry.getKey());
                same(
                        entry.getValue(),
                        all.getMap(cell + " && it.managementUnit == '" + units.get(i) + "' }"),
                        entry.getKey());
            }
        }
    }

    private void add(String season, Row row, ALine line) {
        if (row.detected() > 0) {
            lines.add(
                    season,
                    row.detected(),
                    ALine.of(line.ageClass(), line.sex(), "DETECTED")
                            .in(line.unit())
                            .from(line.source()));
        }
        if (row.counted() > row.detected()) {
            lines.add(season, row.counted() - row.detected(), line);
        }
    }

    private static JsonPath report(String season, String rest) {
        return as("epidemiologist")
                .get("/api/v1/prevalence?season=" + season + "&" + rest)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
    }

    private static void same(Row row, JsonPath report, String by, String value) {
        same(row, report.getMap("cells.find { it." + by + " == '" + value + "' }"), value);
    }

    private static void same(Row row, Map<String, Object> cell, String value) {
        same(row, cell, value, PRINTED);
    }

    private static void same(Row row, Map<String, Object> cell, String value, double printed) {
        assertEquals(row.counted(), cell.get("counted"), value);
        assertEquals(row.detected(), cell.get("detected"), value);
        assertEquals(row.percent(), percent(cell.get("prevalence")), printed, value + " of " + row);
        assertEquals(row.lower(), percent(cell.get("lower")), printed, value + " of " + row);
        assertEquals(row.upper(), percent(cell.get("upper")), printed, value + " of " + row);
    }

    private static double percent(Object share) {
        return 100 * ((Number) share).doubleValue();
    }
}
