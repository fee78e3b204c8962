package org.dentary.animal.line;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.ThreadLocalRandom;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.IntStream;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The line list against a real database: closed and succeeded, never overwritten, and silent where nothing differs. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class LineServiceTest {
    @Inject
    LineService lines;

    @Inject
    EntityManager entities;

    private String disease;

    @BeforeEach
    void plan() {
        disease = "LINE_TEST";
        sql("insert into disease values ('LINE_TEST', 'A test disease', 900) on conflict do nothing");
        sql("insert into species values ('LINE_DEER', 'A test deer', 900, false) on conflict do nothing");
        sql("insert into region values ('LINE_REGION', 'A test region', 900) on conflict do nothing");
        sql("insert into management_unit (code, name, position, region) values"
                + " ('LINE_UNIT', 'A test unit', 900, 'LINE_REGION') on conflict do nothing");
        sql("insert into station values ('LINE_STATION', 'A test station', 900, 'LINE_UNIT', 'America/Chicago')"
                + " on conflict do nothing");
        sql("insert into season (code, name, starts_on, ends_on) values"
                + " ('LINE-1981', 'A test season', '1981-06-01', '1982-05-31') on conflict do nothing");
    }

    @Test
    void opensOneLinePerDiseaseWithTheAnimalsFacts() {
        String kit = animals(1).get(0);
        lines.openLines(List.of(new LineService.NewLine(kit, "YEARLING", false, true)), "INTAKE");
        assertEquals("LINE-1981 LINE_UNIT LINE_REGION MALE YEARLING true PENDING PENDING ", line(kit));
        assertEquals(1, rows(kit));
    }

    @Test
    void writesNothingWhereNothingDiffers() {
        String kit = animals(1).get(0);
        lines.openLines(List.of(kit), "INTAKE");
        lines.refreshFacts(List.of(kit), "AGAIN");
        lines.setAges(List.of(new LineService.AgeOf(kit, "UNKNOWN", false)), "AGAIN");
        lines.setOutcomes(List.of(new LineService.OutcomeOf(kit, disease, "NOT_TESTED", "NOT_TESTED", "")), "AGAIN");
        lines.openLines(List.of(kit), "AGAIN");
        assertEquals(1, rows(kit));
    }

    @Test
    void closesTheOldRowAndKeepsItAsItWas() {
        String kit = animals(1).get(0);
        lines.openLines(List.of(kit), "INTAKE");
        lines.setAges(List.of(new LineService.AgeOf(kit, "ADULT", true)), "READING");
        assertEquals(2, rows(kit));
        assertEquals(
                "UNKNOWN INTAKE",
                one("select age_class || ' ' || cause from line where kit = '" + kit
                        + "' and disease = 'LINE_TEST' and closed_at is not null"));
        assertEquals(
                "ADULT READING true",
                one("select age_class || ' ' || cause || ' ' || age_disputed from line" + " where kit = '" + kit
                        + "' and disease = 'LINE_TEST' and closed_at is null"));
        assertEquals(
                "true",
                one("select (a.closed_at = b.opened_at)::text from line a join line b on b.kit = a.kit"
                        + " and b.disease = a.disease and b.id > a.id where a.kit = '" + kit
                        + "' and a.disease = 'LINE_TEST'"));
    }

    @Test
    void theFirstSpecimenMakesAnUntestedAnimalPendingAndALaterOneChangesNothing() {
        String kit = animals(1).get(0);
        lines.openLines(List.of(kit), "INTAKE");
        tissueOf(kit);
        lines.settle(List.of(kit), "SPECIMEN");
        assertEquals("LINE-1981 LINE_UNIT LINE_REGION MALE UNKNOWN true PENDING PENDING ", line(kit));
        lines.setOutcomes(List.of(new LineService.OutcomeOf(kit, disease, "NOT_TESTED", "NOT_TESTED", "")), "FINDING");
        lines.settle(List.of(kit), "SPECIMEN");
        assertEquals("LINE-1981 LINE_UNIT LINE_REGION MALE UNKNOWN true NOT_TESTED NOT_TESTED ", line(kit));
        assertEquals(3, rows(kit));
    }

    @Test
    void anOutcomeOfOneDiseaseLeavesTheOthersAlone() {
        sql("insert into disease values ('LINE_OTHER', 'Another', 901) on conflict do nothing");
        String kit = animals(1).get(0);
        lines.openLines(List.of(kit), "INTAKE");
        lines.setOutcomes(List.of(new LineService.OutcomeOf(kit, disease, "SUSPECT", "PENDING", "")), "FINDING");
        assertEquals(2, rows(kit));
        assertEquals("1", one("select count(*)::text from line where kit = '" + kit + "' and disease = 'LINE_OTHER'"));
    }

    @Test
    void anUnresolvedSwapIsCountedNowhereUntilItIsResolved() {
        List<String> two = animals(2);
        lines.openLines(two, "INTAKE");
        UUID swap = swapOf(two);
        lines.settle(two, "RE_ATTRIBUTION_ASKED");
        two.forEach(kit -> assertEquals(
                "LINE-1981 LINE_UNIT LINE_REGION MALE UNKNOWN false NOT_TESTED NOT_TESTED NOT_ATTRIBUTABLE",
                line(kit)));
        refuse(swap);
        lines.settle(two, "RE_ATTRIBUTION_REFUSED");
        two.forEach(kit -> assertEquals(3, rows(kit)));
    }

    @Test
    void whatIsTrueOfOneKitIsTrueOfEveryKitOfTheAnimal() {
        List<String> three = animals(3);
        String counted = three.get(0);
        String duplicate = three.get(1);
        lines.openLines(three, "INTAKE");
        sql("update animal set same_as = '" + counted + "' where kit = '" + duplicate + "'");
        tissueOf(duplicate);
        UUID swap = swapOf(List.of(duplicate, three.get(2)));
        lines.settle(List.of(three.get(2), duplicate), "RE_ATTRIBUTION_ASKED");
        assertEquals(
                "LINE-1981 LINE_UNIT LINE_REGION MALE UNKNOWN true PENDING PENDING NOT_ATTRIBUTABLE", line(counted));
        assertEquals("LINE-1981 LINE_UNIT LINE_REGION MALE UNKNOWN true PENDING PENDING DUPLICATE", line(duplicate));
        sql("update animal set same_as = null where kit = '" + duplicate + "'");
        lines.settle(List.of(counted, duplicate), "SAME_AS_UNDONE");
        assertEquals("LINE-1981 LINE_UNIT LINE_REGION MALE UNKNOWN false NOT_TESTED NOT_TESTED ", line(counted));
        assertEquals(
                "LINE-1981 LINE_UNIT LINE_REGION MALE UNKNOWN true PENDING PENDING NOT_ATTRIBUTABLE", line(duplicate));
        refuse(swap);
        lines.settle(List.of(duplicate), "RE_ATTRIBUTION_REFUSED");
        assertEquals("LINE-1981 LINE_UNIT LINE_REGION MALE UNKNOWN true PENDING PENDING ", line(duplicate));
    }

    @Test
    void aCorrectedFactReachesTheLineAndTheFirstExclusionWins() {
        String kit = animals(1).get(0);
        lines.openLines(List.of(kit), "INTAKE");
        sql("update animal set sex = 'FEMALE', unit = null, entered_in_error = true, not_attributable = true"
                + " where kit = '" + kit + "'");
        lines.refreshFacts(List.of(kit), "CORRECTION");
        assertEquals("LINE-1981 - - FEMALE UNKNOWN false NOT_TESTED NOT_TESTED ENTERED_IN_ERROR", line(kit));
    }

    @Test
    void aThousandAnimalsAreRevisedByAHandfulOfStatements() {
        List<String> kits = animals(1000);
        lines.openLines(kits, "INTAKE");
        var statistics = entities.getEntityManagerFactory()
                .unwrap(org.hibernate.SessionFactory.class)
                .getStatistics();
        statistics.setStatisticsEnabled(true);
        statistics.clear();
        lines.setAges(
                kits.stream()
                        .map(kit -> new LineService.AgeOf(kit, "FAWN", false))
                        .toList(),
                "READING");
        assertEquals(2, statistics.getPrepareStatementCount());
        assertEquals(
                "1000",
                one("select count(*)::text from line where kit = any(string_to_array('"
                        + String.join(",", kits) + "', ',')) and disease = 'LINE_TEST' and closed_at is null"
                        + " and age_class = 'FAWN'"));
    }

    @Test
    void twoRevisionsAtOnceLoseNeither() throws Exception {
        String kit = animals(1).get(0);
        lines.openLines(List.of(kit), "INTAKE");
        tissueOf(kit);
        AtomicReference<Throwable> fault = new AtomicReference<>();
        Thread other = new Thread(() -> {
            try {
                QuarkusTransaction.requiringNew()
                        .run(() -> lines.setAges(List.of(new LineService.AgeOf(kit, "ADULT", false)), "READING"));
            } catch (Throwable thrown) {
                fault.set(thrown);
            }
        });
        QuarkusTransaction.requiringNew().run(() -> {
            lines.settle(List.of(kit), "SPECIMEN");
            other.start();
            try {
                Thread.sleep(300);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        });
        other.join();
        assertNull(fault.get());
        assertEquals("LINE-1981 LINE_UNIT LINE_REGION MALE ADULT true PENDING PENDING ", line(kit));
    }

    private String line(String kit) {
        return one("select concat_ws(' ', coalesce(season, '-'), coalesce(unit, '-'), coalesce(region, '-'), sex,"
                + " age_class, has_specimen::text, derived_outcome, outcome, exclusion) from line where kit = '" + kit
                + "' and disease = 'LINE_TEST' and closed_at is null");
    }

    private void tissueOf(String kit) {
        sql("insert into label (code, part, kit_printed, kit_bound) values ('" + kit + "-T', 'NODES', '" + kit + "', '"
                + kit + "')");
        sql(
                "insert into specimen (code, tissue, side, condition, preservation, collected_at, collected_by, recorded_by,"
                        + " recorded_at) values ('" + kit
                        + "-T', 'OBEX', 'NONE', 'GOOD', 'FROZEN', now(), 'test', 'test', now())");
    }

    private UUID swapOf(List<String> two) {
        UUID id = UUID.randomUUID();
        sql("insert into label (code, part, kit_printed, kit_bound) values ('" + two.get(0) + "-S', 'NODES', '"
                + two.get(0) + "', '" + two.get(0) + "')");
        sql("insert into re_attribution values ('" + id + "', '" + two.get(0) + "-S', '" + two.get(0) + "', '"
                + two.get(1) + "', 'trays', 'photo', 'test', now())");
        return id;
    }

    private void refuse(UUID swap) {
        sql("insert into re_attribution_decision values ('" + swap + "', false, 'none', 'test', now())");
    }

    private int rows(String kit) {
        return Integer.parseInt(
                one("select count(*)::text from line where disease = 'LINE_TEST' and kit = '" + kit + "'"));
    }

    private String one(String query) {
        return QuarkusTransaction.requiringNew()
                .call(() -> (String) entities.createNativeQuery(query).getSingleResult());
    }

    private void sql(String statement) {
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(statement).executeUpdate());
    }

    private List<String> animals(int count) {
        UUID block = UUID.randomUUID();
        sql("insert into kit_block (id, season, station, parts, kits, issued_by, issued_at) values ('" + block
                + "', 'LINE-1981', 'LINE_STATION', '{JAW}', " + count + ", 'test', now())");
        String prefix = "L" + Long.toString(ThreadLocalRandom.current().nextLong(100_000, 999_999));
        List<String> kits =
                IntStream.range(0, count).mapToObj(i -> prefix + "-" + i).toList();
        sql("insert into kit (code, block, position) select '" + prefix + "-' || i, '" + block
                + "', i from generate_series(0, " + (count - 1) + ") i");
        sql("insert into animal (kit, species, origin, sex, sex_evidence, died_on, unit, station, season,"
                + " mortality_source, collection_route, clinical_signs, sampling_basis, jaw_status, recorded_by,"
                + " recorded_at) select '" + prefix
                + "-' || i, 'LINE_DEER', 'WILD', 'MALE', 'UNKNOWN', '1981-11-14', 'LINE_UNIT', 'LINE_STATION',"
                + " 'LINE-1981', 'HUNTER_HARVEST', 'STATION', 'NONE_SEEN', 'MANDATORY', 'READ', 'test', now()"
                + " from generate_series(0, " + (count - 1) + ") i");
        return kits;
    }
}
