package org.dentary.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.dentary.setup.SetUpRules.Checked;
import org.dentary.setup.list.Known;
import org.dentary.setup.list.SetUpList;
import org.junit.jupiter.api.Test;

class SetUpRulesTest {
    private static final Map<SetUpList, Set<String>> CODES = new EnumMap<>(Map.of(
            SetUpList.UNITS, Set.of("U1"),
            SetUpList.DISEASES, Set.of("D1"),
            SetUpList.STATIONS, Set.of("S1", "S2"),
            SetUpList.PERSONS, Set.of("P1")));

    @Test
    void aFaultIsNamedByLineColumnRuleAndWhatToDo() {
        Checked checked = check(SetUpList.STATIONS, """
                code,name,unit,time_zone
                S1,North gate,U1,America/Chicago
                s2,South gate,U9,Central time
                S3,,U1,America/Denver
                """);
        assertEquals(
                List.of("3 code INVALID_VALUE", "3 unit INVALID_VALUE", "3 time_zone INVALID_VALUE", "4 name REQUIRED"),
                told(checked.problems()));
        assertEquals(
                "'U9' is not allowed for 'unit'; allowed: a code of the list management-units",
                checked.problems().get(1).message());
        assertEquals(1, checked.rows().size());
    }

    @Test
    void whatHasToBeSetUpBeforeAFileIsSaid() {
        assertEquals(
                "'R1' is not allowed for 'region'; allowed: a code of the list regions. Regions are not set up yet: send"
                        + " that file first",
                check(SetUpList.UNITS, "code,name,region\nU2,Unit,R1\n")
                        .problems()
                        .get(0)
                        .message());
    }

    @Test
    void headersAreHeldAgainstTheList() {
        assertEquals(
                List.of("1 nombre COLUMN_UNKNOWN", "1 name COLUMN_MISSING", "1 time_zone COLUMN_MISSING"),
                told(check(SetUpList.STATIONS, "code,nombre\nS1,x\n").problems()));
        assertEquals(
                List.of("1 code COLUMN_TWICE"),
                told(check(SetUpList.DISEASES, "code,code,name\nA,A,a\n").problems()));
    }

    @Test
    void linesOfAnotherLengthAndRowsGivenTwiceAreNamed() {
        assertEquals(
                List.of("3  CELL_COUNT", "4 code TWICE_IN_FILE"),
                told(check(SetUpList.DISEASES, "code,name\nA,a\nB,b,c\nA,again\n")
                        .problems()));
    }

    @Test
    void aColumnLeftOutKeepsWhatIsThereAndAnEmptyCellEmptiesIt() {
        List<Map<String, String>> present =
                List.of(row("code", "S1", "name", "Old", "unit", "U1", "time_zone", "America/Chicago"));
        Checked left = check(SetUpList.STATIONS, "code,name,time_zone\nS1,New,America/Denver\n", present, Set.of());
        assertEquals("U1", left.rows().get(0).cell("unit"));
        Checked emptied =
                check(SetUpList.STATIONS, "code,name,unit,time_zone\nS1,New,,America/Denver\n", present, Set.of());
        assertEquals("", emptied.rows().get(0).cell("unit"));
    }

    @Test
    void effectAndOrderAreTold() {
        List<Map<String, String>> present =
                List.of(row("code", "A", "name", "a"), row("code", "B", "name", "b"), row("code", "C", "name", "c"));
        Known known = Known.of(SetUpList.DISEASES, CODES, present, Set.of());
        Checked some = check(SetUpList.DISEASES, "code,name\nD,d\nB,other\nA,a\n", present, Set.of());
        assertEquals(new SetUpRules.Effect(1, 1, 1), SetUpRules.effect(SetUpList.DISEASES, some.rows(), known));
        assertEquals(
                List.of("A", "B", "C", "D"),
                List.copyOf(SetUpRules.positions(SetUpList.DISEASES, some.rows(), known)
                        .keySet()));
        Checked all = check(SetUpList.DISEASES, "code,name\nC,c\nD,d\nB,b\nA,a\n", present, Set.of());
        assertEquals(
                Map.of("C", 1, "D", 2, "B", 3, "A", 4), SetUpRules.positions(SetUpList.DISEASES, all.rows(), known));
    }

    @Test
    void aRowThatChangesHowOutcomesAreDerivedSaysSoBeforeItIsPosted() {
        List<Map<String, String>> settings = List.of(
                row("name", "SCREENING_ALONE_DETECTS", "value", "false", "season", "", "region", "", "unit", ""));
        String header = "name,value,season,region,unit\n";
        assertEquals(
                List.of("2 value OUTCOMES_JUDGED_ANEW", "4 value OUTCOMES_JUDGED_ANEW"),
                told(check(
                                SetUpList.SETTINGS,
                                header
                                        + "SCREENING_ALONE_DETECTS,true,,,\nCONTACT_DAYS,3,,,\nPOOL_PASSES_TO_MEMBERS,true,,,\n",
                                settings,
                                Set.of())
                        .warnings()));
        assertEquals(
                List.of(),
                check(SetUpList.SETTINGS, header + "SCREENING_ALONE_DETECTS,false,,,\n", settings, Set.of())
                        .warnings());
    }

    @Test
    void seasonsMustNotOverlapAndShouldLeaveNoGap() {
        List<Map<String, String>> present =
                List.of(row("code", "Y1", "name", "y1", "starts_on", "1950-06-01", "ends_on", "1951-05-31"));
        assertEquals(
                List.of("2 starts_on SEASONS_OVERLAP"),
                told(check(
                                SetUpList.SEASONS,
                                "code,name,starts_on,ends_on\nY2,y2,1951-05-31,1952-05-31\n",
                                present,
                                Set.of())
                        .problems()));
        Checked gap = check(
                SetUpList.SEASONS, "code,name,starts_on,ends_on\nY2,y2,1951-06-02,1952-05-31\n", present, Set.of());
        assertEquals(List.of(), gap.problems());
        assertEquals(List.of("2 starts_on SEASONS_GAP"), told(gap.warnings()));
        Checked next = check(
                SetUpList.SEASONS, "code,name,starts_on,ends_on\nY2,y2,1951-06-01,1952-05-31\n", present, Set.of());
        assertEquals(List.of(), next.problems());
        assertEquals(List.of(), next.warnings());
        assertEquals(
                List.of("2 ends_on DAYS_REVERSED"),
                told(check(
                                SetUpList.SEASONS,
                                "code,name,starts_on,ends_on\nY2,y2,1952-06-01,1952-05-31\n",
                                present,
                                Set.of())
                        .problems()));
        assertEquals(
                List.of("2 starts_on SEASON_FIXED"),
                told(check(
                                SetUpList.SEASONS,
                                "code,name,starts_on,ends_on\nY1,y1,1950-06-02,1951-05-31\n",
                                present,
                                Set.of("Y1"))
                        .problems()));
    }

    @Test
    void aSettingsValueIsHeldAgainstTheSetting() {
        assertEquals(
                List.of("3 value INVALID_VALUE", "4 name INVALID_VALUE"),
                told(check(SetUpList.SETTINGS, """
                        name,value,unit
                        DESIGN_PREVALENCE,0.02,U1
                        DESIGN_PREVALENCE,2%,
                        DESIGN,0.02,
                        """).problems()));
    }

    @Test
    void anAccountNeedsAPasswordAndSomebodyMustCoordinate() {
        assertEquals(
                List.of("2 password REQUIRED", "2 role LAST_COORDINATOR"),
                told(check(SetUpList.ACCOUNTS, "username,role,stations\nana,SAMPLER,S1 S2\n")
                        .problems()));
        List<Map<String, String>> present = List.of(row(
                "username",
                "boss",
                "person",
                "",
                "role",
                "COORDINATOR",
                "stations",
                "*",
                "password",
                "",
                "active",
                "yes"));
        assertEquals(
                List.of(),
                told(check(
                                SetUpList.ACCOUNTS,
                                "username,role,stations,password\nana,SAMPLER,*,$2a$x\n",
                                present,
                                Set.of())
                        .problems()));
        assertEquals(
                List.of("2 password INVALID_VALUE"),
                told(check(SetUpList.ACCOUNTS, "username,role,password\nana,SAMPLER,too short\n", present, Set.of())
                        .problems()));
        assertEquals(
                List.of("2 role LAST_COORDINATOR"),
                told(check(SetUpList.ACCOUNTS, "username,role,active\nboss,COORDINATOR,no\n", present, Set.of())
                        .problems()));
        assertEquals(
                List.of("2 stations INVALID_VALUE"),
                told(check(
                                SetUpList.ACCOUNTS,
                                "username,role,stations,password\nana,SAMPLER,S1 S9,$2a$x\n",
                                present,
                                Set.of())
                        .problems()));
    }

    @Test
    void aReviewedCautionKeepsItsText() {
        Map<String, String> reviewed = row(
                "code",
                "C1",
                "version",
                "1",
                "disease",
                "",
                "hazard",
                "INTAKE",
                "text",
                "old",
                "authority",
                "a",
                "reviewed_by",
                "P1",
                "reviewed_on",
                "2026-01-01",
                "review_by",
                "");
        String header = "code,version,hazard,text,authority\n";
        assertEquals(
                List.of("2 text CAUTION_REVIEWED"),
                told(check(SetUpList.CAUTIONS, header + "C1,1,INTAKE,new,a\n", List.of(reviewed), Set.of())
                        .problems()));
        assertEquals(
                List.of(),
                told(check(SetUpList.CAUTIONS, header + "C1,2,INTAKE SAMPLING,new,a\n", List.of(reviewed), Set.of())
                        .problems()));
        assertEquals(
                List.of("2 hazard INVALID_VALUE"),
                told(check(SetUpList.CAUTIONS, header + "C1,2,EATING,new,a\n", List.of(reviewed), Set.of())
                        .problems()));
        assertEquals(
                List.of("2 reviewed_by REVIEW_INCOMPLETE"),
                told(check(SetUpList.CAUTIONS, "code,version,hazard,text,authority,reviewed_by\nC9,1,INTAKE,t,a,P1\n")
                        .problems()));
    }

    @Test
    void everyListHasItsKeyAmongItsColumns() {
        for (SetUpList list : SetUpList.values()) {
            assertTrue(list.header().containsAll(list.key()), list.path());
        }
    }

    static List<String> told(List<LineProblem> problems) {
        return problems.stream()
                .map(problem -> problem.line() + " " + problem.field() + " " + problem.rule())
                .toList();
    }

    private static Map<String, String> row(String... cells) {
        Map<String, String> row = new LinkedHashMap<>();
        for (int i = 0; i < cells.length; i += 2) {
            row.put(cells[i], cells[i + 1]);
        }
        return row;
    }

    private static Checked check(SetUpList list, String file) {
        return check(list, file, List.of(), Set.of());
    }

    private static Checked check(
            SetUpList list, String file, List<Map<String, String>> present, Set<String> fixedSeasons) {
        return SetUpRules.check(
                list,
                SetUpFile.read(list, file.getBytes(StandardCharsets.UTF_8)),
                Known.of(list, CODES, present, fixedSeasons));
    }
}
