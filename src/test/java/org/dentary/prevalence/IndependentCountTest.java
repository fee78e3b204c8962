package org.dentary.prevalence;

import static org.dentary.intake.IntakeFixture.as;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * The reports against a count that shares nothing with them: one statement over what people and laboratories recorded
 * (animals, links, readings, designations, labels, re-attributions, submissions, findings, releases). It knows neither the
 * line list nor today's binding of a label nor a stored outcome.
 */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class IndependentCountTest {
    private static final String BY_HAND = """
            with who as (
              select a.kit, a.sex, a.unit, a.station, a.origin, a.mortality_source, a.clinical_signs, a.sampling_basis,
                     a.entered_in_error,
                     (select l.same_as from animal_link l where l.kit = a.kit order by l.id desc limit 1) as same_as,
                     exists (select 1 from re_attribution r
                              where a.kit in (r.from_kit, r.to_kit)
                                and not exists (select 1 from re_attribution_decision d where d.re_attribution = r.id))
                       as swap_open,
                     coalesce((select d.age_class from designated_age d where d.kit = a.kit order by d.id desc limit 1),
                              (select r.age_class from jaw_reading r
                                where r.kit = a.kit and not r.disputed and r.certainty in ('CLEAR', 'PROBABLE')
                                  and r.method in ('TOOTH_REPLACEMENT', 'TOOTH_WEAR', 'TOOTH_ROW_LENGTH')
                                order by r.received_at, r.id limit 1),
                              'UNKNOWN') as age
                from animal a where a.season = 'T2025' and a.species = 'WHITE_TAILED_DEER' and a.unit in (:units)),
            tube as (
              select s.code, s.tissue, s.archived,
                     coalesce((select r.to_kit from re_attribution r
                                 join re_attribution_decision d on d.re_attribution = r.id and d.confirmed
                                where r.code = s.code order by d.at desc limit 1), b.kit_printed) as kit
                from specimen s join label b on b.code = s.code),
            owned as (select t.*, coalesce(w.same_as, w.kit) as animal from tube t join who w on w.kit = t.kit),
            standing as (
              select f.* from finding f
               where f.status in ('FINAL', 'CORRECTED') and f.finding <> 'INVALID_RUN'
                 and not exists (select 1 from finding later where later.corrects = f.id)),
            words as (
              select o.animal, array_agg(f.finding) as said,
                     bool_or(f.stage = 'CONFIRMATORY' and f.finding = 'DETECTED') as confirmed
                from owned o join finding_specimen x on x.code = o.code join standing f on f.id = x.finding
                join test_method m on m.code = f.method and o.tissue = any (m.accepted_tissues)
               where f.disease = :disease group by o.animal),
            held as (
              select distinct o.animal
                from owned o join finding_specimen x on x.code = o.code join standing f on f.id = x.finding
               where f.finding in ('SUSPECT', 'DETECTED')
                 and (select r.derived_outcome from release r where r.kit = o.animal and r.disease = f.disease
                       order by r.id desc limit 1) is distinct from 'DETECTED'),
            tissue as (
              select o.animal,
                     bool_or(q.sent and not q.answered) as unreported,
                     bool_or(not q.sent and not o.archived) as unsent
                from owned o,
             lateral (select exists (select 1 from submission_specimen p join submission b on b.id = p.submission
                                      where p.code = o.code and b.dispatched_at is not null) as sent,
                             exists (select 1 from finding_specimen x join standing f on f.id = x.finding
                                      where x.code = o.code) as answered) q
               group by o.animal),
            counted as (
              select w.*, words.said,
                     case when w.entered_in_error then 'ENTERED_IN_ERROR'
                          when w.same_as is not null then 'DUPLICATE'
                          when w.swap_open then 'NOT_ATTRIBUTABLE'
                          when w.origin <> 'WILD' or w.mortality_source not in (:sources) or w.clinical_signs = 'SEEN'
                            or w.sampling_basis not in ('MANDATORY', 'VOLUNTARY', 'QUOTA') then 'OUT_OF_SCOPE'
                          when t.animal is null then 'NO_SPECIMEN'
                          when words.confirmed
                          then case when (select r.derived_outcome from release r
                                           where r.kit = w.kit and r.disease = :disease order by r.id desc limit 1)
                                         = 'DETECTED' then 'COUNTED' else 'PENDING' end
                          when words.said && array['SUSPECT', 'DETECTED'] then 'PENDING'
                          when t.unreported or words.said is null and t.unsent then 'PENDING'
                          -- what is withheld of one disease is not told by another's turn having come
                          when words.said is null and w.kit in (select animal from held) then 'PENDING'
                          when 'NOT_DETECTED' = any (words.said) then 'COUNTED'
                          when 'INCONCLUSIVE' = any (words.said) then 'INCONCLUSIVE'
                          when 'UNSUITABLE' = any (words.said) then 'UNSUITABLE'
                          else 'NOT_TESTED' end as step
                from who w left join tissue t on t.animal = w.kit left join words on words.animal = w.kit)
            select age, sex, unit, mortality_source, station, step,
                   coalesce('DETECTED' = any (said), false), count(*)
              from counted group by 1, 2, 3, 4, 5, 6, 7
            """;
    private static final List<String> DIMENSIONS =
            List.of("ageClass", "sex", "managementUnit", "mortalitySource", "station");

    @Inject
    PlayedSeason played;

    @Inject
    EntityManager entities;

    private PlayedSeason.Played season;

    /** One group that the statement counted; its values in the order of the dimensions. */
    private record Group(List<String> values, String step, boolean detected, int animals) {}

    @BeforeEach
    void play() {
        season = played.play();
    }

    @Test
    void theReportsCountWhatWasRecorded() {
        for (String disease : List.of(SeasonFixture.DISEASE, PlayedSeason.SECOND_DISEASE)) {
            for (String sources : List.of("HUNTER_HARVEST", "HUNTER_HARVEST,VEHICLE")) {
                List<Group> byHand = byHand(disease, List.of(sources.split(",")));
                for (String by : List.of(
                        "ageClass,sex",
                        "ageClass",
                        "sex",
                        "managementUnit",
                        "mortalitySource",
                        "station",
                        "managementUnit,ageClass,sex",
                        "mortalitySource,managementUnit")) {
                    same(byHand, disease, sources, by);
                }
            }
        }
        // Counted once more on paper, from the names in PlayedSeason, so that the two cannot be wrong together.
        JsonPath report = report(SeasonFixture.DISEASE, "HUNTER_HARVEST", "ageClass,sex");
        assertEquals(
                Map.ofEntries(
                        Map.entry("TAKEN", 36),
                        Map.entry("ENTERED_IN_ERROR", 1),
                        Map.entry("DUPLICATE", 1),
                        Map.entry("NOT_ATTRIBUTABLE", 2),
                        Map.entry("OUT_OF_SCOPE", 3),
                        Map.entry("NO_SPECIMEN", 2),
                        Map.entry("NOT_TESTED", 1),
                        Map.entry("UNSUITABLE", 1),
                        Map.entry("INCONCLUSIVE", 1),
                        Map.entry("PENDING", 5),
                        Map.entry("COUNTED", 19)),
                steps(report));
        assertEquals(3, report.getInt("total.detected"));
        JsonPath second = report(PlayedSeason.SECOND_DISEASE, "HUNTER_HARVEST", "ageClass,sex");
        assertEquals(3, second.getInt("total.counted"));
        assertEquals(1, second.getInt("total.detected"));
    }

    private void same(List<Group> byHand, String disease, String sources, String by) {
        JsonPath report = report(disease, sources, by);
        String asked = disease + ", " + sources + " by " + by;
        Map<String, Integer> steps = new TreeMap<>(steps(report));
        Map<String, Integer> stepsByHand = new TreeMap<>();
        steps.keySet().forEach(step -> stepsByHand.put(step, 0));
        byHand.forEach(group -> {
            stepsByHand.merge(group.step(), group.animals(), Integer::sum);
            stepsByHand.merge("TAKEN", group.animals(), Integer::sum);
        });
        assertEquals(stepsByHand, steps, asked);
        List<Integer> places =
                Arrays.stream(by.split(",")).map(DIMENSIONS::indexOf).toList();
        Function<Group, String> cell = group ->
                String.join(" ", places.stream().map(group.values()::get).toList());
        Map<String, String> cells = new TreeMap<>();
        Map<String, int[]> cellsByHand = new TreeMap<>();
        report.<Map<String, Object>>getList("cells").forEach(told -> {
            String name = String.join(
                    " ",
                    Arrays.stream(by.split(","))
                            .map(dimension -> told.get(dimension).toString())
                            .toList());
            if ((int) told.get("counted") + (int) told.get("pending") > 0) {
                cells.put(
                        name,
                        told.get("counted") + " counted, " + told.get("detected") + " detected, " + told.get("pending")
                                + " pending");
            }
        });
        byHand.forEach(group -> {
            boolean isCounted = group.step().equals("COUNTED");
            if (isCounted || group.step().equals("PENDING")) {
                int[] counts = cellsByHand.computeIfAbsent(cell.apply(group), name -> new int[3]);
                counts[isCounted ? 0 : 2] += group.animals();
                counts[1] += isCounted && group.detected() ? group.animals() : 0;
            }
        });
        Map<String, String> told = new TreeMap<>();
        cellsByHand.forEach((name, counts) ->
                told.put(name, counts[0] + " counted, " + counts[1] + " detected, " + counts[2] + " pending"));
        assertEquals(told, cells, asked);
    }

    private static Map<String, Integer> steps(JsonPath report) {
        Map<String, Integer> steps = new TreeMap<>();
        report.<Map<String, Object>>getList("takenToCounted")
                .forEach(step -> steps.put(step.get("step").toString(), (Integer) step.get("animals")));
        return steps;
    }

    private JsonPath report(String disease, String sources, String by) {
        return as("epidemiologist")
                .get("/api/v1/prevalence?season=T2025&disease=" + disease + "&mortalitySource=" + sources + "&by=" + by
                        + "&unit=" + season.north() + "," + season.south())
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
    }

    private List<Group> byHand(String disease, List<String> sources) {
        List<Group> groups = new ArrayList<>();
        for (Object row : entities.createNativeQuery(BY_HAND)
                .setParameter("units", List.of(season.north(), season.south()))
                .setParameter("disease", disease)
                .setParameter("sources", sources)
                .getResultList()) {
            Object[] told = (Object[]) row;
            groups.add(new Group(
                    Arrays.stream(told, 0, 5).map(Object::toString).toList(),
                    told[5].toString(),
                    (Boolean) told[6],
                    ((Number) told[7]).intValue()));
        }
        return groups;
    }
}
