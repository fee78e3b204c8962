package org.dentary.setup.demo;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/** One season of the demo, played in the order in which it would have happened. */
final class DemoSeason {
    static final String RUNNING = "SY2026";
    /** Where the running season brings the first detection; its incident is still open. */
    private static final String FIRST_DETECTION = "U21";

    private static final List<String> PARTS = List.of("JAW", "NODE_LEFT", "NODE_RIGHT", "FORM", "STUB");
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
    private static final int AT_ONCE = 4;

    private static final List<String> FIRST_NAMES = List.of(
            "Ansel", "Birgit", "Caspar", "Delia", "Edvin", "Frida", "Gunnar", "Hedda", "Ivo", "Jorun", "Kasper");
    private static final List<String> LAST_NAMES =
            List.of("Aldergate", "Brackwater", "Corrin", "Dunmere", "Eastlake", "Farrow", "Glenwick", "Harrowby");
    private static final List<String> STREETS =
            List.of("Larch Lane", "Mill Road", "Quarry Street", "River Bend", "Station Road");

    private final DemoApi api;
    private final String season;
    private final List<Deer> deer;
    private final Map<String, List<String>> kits = new HashMap<>();
    private final Map<String, String> codes = new HashMap<>();

    DemoSeason(DemoApi api, String season, List<Deer> deer) {
        this.api = api;
        this.season = season;
        this.deer = deer;
    }

    void play() {
        issueKits();
        all(deer, this::takeIn);
        all(deer.stream().filter(d -> d.jaw().equals("LATER")).toList(), this::readJawLater);
        all(deer.stream().filter(d -> d.jaw().equals("BLIND_TWICE")).toList(), this::readAgain);
        Map<String, List<Deer>> batches = deer.stream()
                .filter(Deer::tissue)
                .collect(Collectors.groupingBy(this::batch, java.util.TreeMap::new, Collectors.toList()));
        batches.forEach(this::carry);
        putRight();
        api.put(
                "epidemiologist",
                "/data-cuts/" + DemoApi.key(season, "cut"),
                Map.of(
                        "season",
                        season,
                        "name",
                        season.equals(RUNNING) ? "End of " + RUNNING + " so far" : "End of season"));
    }

    private void issueKits() {
        Map<String, Long> needed = deer.stream().collect(Collectors.groupingBy(Deer::station, Collectors.counting()));
        needed.forEach((station, count) -> {
            JsonNode block = api.put(
                    "coordinator",
                    "/kit-blocks/" + DemoApi.key(season, station, "block"),
                    Map.of("season", season, "station", station, "kits", count + 12, "parts", PARTS));
            List<String> stems = new ArrayList<>();
            block.get("kits").forEach(kit -> stems.add(kit.textValue()));
            kits.put(station, stems);
            block.get("labels")
                    .forEach(label -> codes.put(
                            label.get("kit").textValue() + label.get("part").textValue(),
                            label.get("code").textValue()));
        });
    }

    private void takeIn(Deer d) {
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("species", "WHITE_TAILED_DEER");
        body.put("origin", "WILD");
        body.put("sex", d.sex());
        body.put("sexEvidence", d.sex().equals("UNKNOWN") ? "UNKNOWN" : d.sexEvidence());
        body.put("diedOn", d.diedOn().toString());
        body.put("managementUnit", d.unit());
        if (d.unit().equals("UNKNOWN")) {
            body.put("managementUnitReason", "the hunter could not point to the place on the map");
        }
        body.put("station", d.station());
        body.put("mortalitySource", d.source());
        body.put("collectionRoute", d.route());
        body.put("clinicalSigns", d.signs());
        body.put("samplingBasis", d.basis());
        boolean read = d.jaw().equals("AT_INTAKE") || d.jaw().equals("BLIND_TWICE");
        body.put("jawStatus", read ? "READ" : d.jaw().equals("LATER") ? "COLLECTED_TO_READ" : "NOT_EXAMINED");
        if (read) {
            body.put("jawReading", reading(d, "first", at(d, 10, 20)));
        } else if (d.jaw().equals("NEVER")) {
            body.put("jawReason", "the head went home with the hunter");
        }
        body.put(
                "identifiers",
                List.of(Map.of(
                        "type",
                        "REGISTRATION",
                        "issuer",
                        "TWS",
                        "value",
                        season.substring(4) + String.format("%05d", d.number()))));
        if (season.equals(RUNNING) && d.source().equals("HUNTER_HARVEST")) {
            body.put("contact", contact(d));
        }
        body.put("enteredAt", at(d, 11, 0));
        if (d.tissue()) {
            body.put(
                    "specimens",
                    List.of(Map.of(
                            "code",
                            code(d, "NODE_LEFT"),
                            "tissue",
                            "MEDIAL_RETROPHARYNGEAL_NODE",
                            "side",
                            "LEFT",
                            "preservation",
                            "FRESH_CHILLED",
                            "condition",
                            "UNSUITABLE".equals(d.finding()) ? "SOFT" : "GOOD",
                            "collectedAt",
                            at(d, 10, 45))));
        }
        api.put("sampler", "/animals/" + kit(d), body);
    }

    /** Invented people; some left only a telephone number. */
    private static Map<String, Object> contact(Deer d) {
        Map<String, Object> contact = new LinkedHashMap<>();
        contact.put(
                "name",
                FIRST_NAMES.get(d.number() % FIRST_NAMES.size()) + " "
                        + LAST_NAMES.get(d.number() / FIRST_NAMES.size() % LAST_NAMES.size()));
        contact.put("phone", String.format("555-01%02d", d.number() % 100));
        if (d.number() % 4 != 0) {
            contact.put("address", (d.number() % 180 + 1) + " " + STREETS.get(d.number() % STREETS.size()));
        }
        contact.put("mayBeMessaged", d.number() % 3 == 0);
        return contact;
    }

    private void readJawLater(Deer d) {
        LocalDate day = d.diedOn().plusDays(16);
        if (day.isBefore(TODAY)) {
            api.put(
                    "coordinator",
                    "/animals/" + kit(d) + "/jaw-readings/" + DemoApi.key(season, d.number(), "first"),
                    reading(d, null, at(d.station(), day, 14, 0)));
        }
    }

    private void readAgain(Deer d) {
        LocalDate day = d.diedOn().plusDays(6);
        if (day.isBefore(TODAY)) {
            api.put(
                    "coordinator",
                    "/animals/" + kit(d) + "/jaw-readings/" + DemoApi.key(season, d.number(), "second"),
                    reading(d.number() % 9 == 0 ? older(d) : d, null, at(d.station(), day, 15, 0)));
        }
    }

    /** A reader's commonest slip: a yearling with a new third tooth taken for an adult. */
    private static Deer older(Deer d) {
        return new Deer(
                d.number(),
                d.season(),
                d.station(),
                d.kit(),
                d.unit(),
                d.diedOn(),
                d.sex(),
                d.sexEvidence(),
                d.ageClass().equals("YEARLING") ? "ADULT" : d.ageClass(),
                d.source(),
                d.route(),
                d.signs(),
                d.basis(),
                d.tissue(),
                d.infected(),
                d.finding(),
                d.jaw());
    }

    private Map<String, Object> reading(Deer d, String name, String readAt) {
        Map<String, Object> reading = new LinkedHashMap<>();
        if (name != null) {
            reading.put("id", DemoApi.key(season, d.number(), name).toString());
        }
        reading.put("readAt", readAt);
        boolean early = d.diedOn().getMonthValue() == 9 || d.diedOn().getMonthValue() == 10;
        switch (d.ageClass()) {
            case "FAWN" -> {
                reading.put("cheekTeeth", 4);
                reading.put("thirdTooth", tooth(3, "FULL", "NOT_EXPOSED"));
                reading.put("sixthTooth", tooth(null, "NOT_ERUPTED", "NOT_EXPOSED"));
            }
            case "YEARLING" -> {
                reading.put("cheekTeeth", 6);
                reading.put(
                        "thirdTooth", early ? tooth(3, "FULL", "NOT_EXPOSED") : tooth(2, "ERUPTING", "NOT_EXPOSED"));
                reading.put("sixthTooth", tooth(null, "ERUPTING", "NOT_EXPOSED"));
            }
            default -> {
                reading.put("cheekTeeth", 6);
                reading.put("thirdTooth", tooth(2, "FULL", "DEFINED"));
                reading.put("sixthTooth", tooth(null, "FULL", d.number() % 23 == 0 ? "TRACE" : "DEFINED"));
            }
        }
        return reading;
    }

    private static Map<String, Object> tooth(Integer cusps, String eruption, String dentine) {
        Map<String, Object> tooth = new LinkedHashMap<>();
        if (cusps != null) {
            tooth.put("cusps", cusps);
        }
        tooth.put("eruption", eruption);
        tooth.put("dentine", dentine);
        return tooth;
    }

    /** Tissue goes to the laboratory every ten days, from each region apart. */
    private String batch(Deer d) {
        int days = (int) (d.diedOn().toEpochDay() / 7);
        return days + (List.of("ESKER", "GARROW").contains(d.station()) ? "-west" : "-east");
    }

    private void carry(String batch, List<Deer> all) {
        List<String> left = all.stream().map(d -> code(d, "NODE_LEFT")).toList();
        LocalDate last = all.get(all.size() - 1).diedOn();
        LocalDate handed = last.plusDays(1);
        String station = all.get(0).station();
        if (!handed.isBefore(TODAY.minusDays(4))) {
            if (batch.endsWith("east")) {
                offer(batch, left, station, last.plusDays(1).isBefore(TODAY) ? last.plusDays(1) : TODAY.minusDays(1));
            }
            return;
        }
        offer(batch, left, station, handed);
        if (batch.hashCode() % 11 == 0) {
            api.post(
                    "liaison",
                    "/hand-overs/" + DemoApi.key(season, batch, "hand-over") + "/refusal",
                    Map.of("codes", left, "reason", "the cooler was warm; cool it and offer again"));
            offer(batch + "-again", left, station, handed);
            accept(batch + "-again", left, station, handed);
        } else {
            accept(batch, left, station, handed);
        }
        send(batch, all, station, handed.plusDays(1));
    }

    private void offer(String batch, List<String> codes, String station, LocalDate day) {
        api.put(
                "sampler",
                "/hand-overs/" + DemoApi.key(season, batch, "hand-over"),
                Map.of(
                        "codes",
                        codes,
                        "to",
                        "liaison",
                        "place",
                        station,
                        "occurredAt",
                        at(station, day, 17, 0),
                        "enteredAt",
                        at(station, day, 17, 5)));
    }

    private void accept(String batch, List<String> codes, String station, LocalDate day) {
        boolean late = batch.hashCode() % 7 == 0;
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("codes", codes);
        body.put("occurredAt", at(station, day, 17, 30));
        body.put("enteredAt", at(station, late ? day.plusDays(2) : day, 18, 0));
        if (late) {
            body.put("reason", "no signal at the depot; entered from the paper form");
        }
        api.post("liaison", "/hand-overs/" + DemoApi.key(season, batch, "hand-over") + "/acceptance", body);
    }

    private void send(String batch, List<Deer> all, String station, LocalDate day) {
        String submission = DemoApi.key(season, batch, "submission").toString();
        String path = "/submissions/" + submission;
        api.put("liaison", path, Map.of("laboratory", "MEREGATE"));
        all(
                all,
                d -> api.put(
                        "liaison",
                        path + "/specimens/" + code(d, "NODE_LEFT"),
                        Map.of("packedAt", at(station, day, 9, 0))));
        api.post(
                "liaison",
                path + "/dispatch",
                Map.of(
                        "occurredAt",
                        at(station, day, 15, 0),
                        "enteredAt",
                        at(station, day, 15, 10),
                        "carrier",
                        "GREYWATER",
                        "waybill",
                        "GW-" + submission.substring(0, 8).toUpperCase(java.util.Locale.ROOT),
                        "shipper",
                        "Trained shipper at the depot"));
        LocalDate arrived = day.plusDays(2);
        if (arrived.isAfter(TODAY.minusDays(1))) {
            return;
        }
        boolean twoShort = season.equals("SY2025") && all.size() > 20 && batch.hashCode() % 3 == 0;
        List<Deer> there = twoShort ? all.subList(0, all.size() - 2) : all;
        api.put(
                "liaison",
                path + "/receipt",
                Map.of(
                        "receivedAt", at(station, arrived, 10, 0),
                        "enteredAt", at(station, arrived, 10, 30),
                        "codes", there.stream().map(d -> code(d, "NODE_LEFT")).toList()));
        report(batch, there, arrived);
    }

    private void report(String batch, List<Deer> all, LocalDate arrived) {
        LocalDate reported = arrived.plusDays(8);
        if (reported.isAfter(TODAY.minusDays(1))) {
            return;
        }
        StringBuilder csv = new StringBuilder(
                "specimen_code,accession_number,test_method,stage,finding,tested_on,reported_on,unsuitable_reason,measured_value,laboratory_item\r\n");
        int item = 1;
        List<Deer> suspects = new ArrayList<>();
        for (Deer d : all) {
            if (d.finding() == null) {
                continue;
            }
            boolean unsuitable = d.finding().equals("UNSUITABLE");
            csv.append(code(d, "NODE_LEFT"))
                    .append(',')
                    .append(accession(batch, "M"))
                    .append(",ELISA,SCREENING,")
                    .append(d.finding())
                    .append(',')
                    .append(reported.minusDays(1))
                    .append(',')
                    .append(reported)
                    .append(',')
                    .append(unsuitable ? (d.number() % 3 == 0 ? "NO_FOLLICLES" : "AUTOLYSED") : "")
                    .append(',')
                    .append(d.finding().equals("SUSPECT") ? "OD 2." + (10 + d.number() % 89) : "")
                    .append(',')
                    .append(item++)
                    .append("\r\n");
            if (d.finding().equals("SUSPECT")) {
                suspects.add(d);
            }
        }
        if (item == 1) {
            return;
        }
        post(DemoApi.key(season, batch, "results"), "MEREGATE", csv.toString());
        suspects.forEach(d -> confirm(d, reported));
    }

    private void confirm(Deer d, LocalDate screened) {
        LocalDate sent = screened.plusDays(2);
        if (sent.plusDays(12).isAfter(TODAY.minusDays(1))) {
            return;
        }
        String path = "/submissions/" + DemoApi.key(season, "confirmation");
        api.put("liaison", path, Map.of("laboratory", "STANE", "purpose", "CONFIRMATORY"));
        api.put(
                "liaison",
                path + "/specimens/" + code(d, "NODE_LEFT"),
                Map.of(
                        "packedAt",
                        at(d.station(), sent, 9, 0),
                        "overrideReason",
                        "forwarded by Meregate by agreement with Stane, fresh tissue past its days"));
        Map<String, Object> finding = new LinkedHashMap<>();
        finding.put("specimens", List.of(code(d, "NODE_LEFT")));
        finding.put("method", "IHC");
        finding.put("stage", "CONFIRMATORY");
        finding.put("finding", d.infected() ? "DETECTED" : "NOT_DETECTED");
        finding.put("status", "FINAL");
        finding.put("accession", "S-" + season.substring(4) + "-" + d.number());
        finding.put("laboratory", "STANE");
        finding.put("testedOn", sent.plusDays(9).toString());
        finding.put("reportedOn", sent.plusDays(11).toString());
        String first = DemoApi.key(season, d.number(), "confirmed").toString();
        api.put("liaison", "/findings/" + first, finding);
        boolean waits =
                season.equals(RUNNING) && (d.number() % 3 == 0 || d.unit().equals(FIRST_DETECTION));
        if (d.infected() && !waits) {
            api.put("coordinator", "/animals/" + kit(d) + "/release", Map.of("disease", "CWD"));
        }
        if (!d.infected()) {
            finding.put("status", "CORRECTED");
            finding.put("corrects", first);
            finding.put("reportedOn", sent.plusDays(12).toString());
            finding.put("measuredValue", "accession number completed by the laboratory");
            api.put("liaison", "/findings/" + DemoApi.key(season, d.number(), "corrected"), finding);
        }
    }

    private void post(java.util.UUID id, String laboratory, String csv) {
        api.putCsv("liaison", "/result-imports/" + id + "?laboratory=" + laboratory + "&name=" + id + ".csv", csv);
        api.post("liaison", "/result-imports/" + id + "/posting", Map.of("leaveOut", List.of()));
    }

    /** A label swap put right by two people, and two kits found to be of one animal. */
    private void putRight() {
        List<Deer> two = deer.stream()
                .filter(d ->
                        d.station().equals("ALDER") && d.tissue() && d.diedOn().isBefore(TODAY.minusDays(30)))
                .limit(4)
                .toList();
        if (two.size() < 4) {
            return;
        }
        if (season.equals("SY2025")) {
            String swapped = code(two.get(0), "NODE_LEFT");
            java.util.UUID id = DemoApi.key(season, "swap");
            api.put(
                    "liaison",
                    "/specimens/" + swapped + "/re-attribution/" + id,
                    Map.of(
                            "kit", kit(two.get(1)),
                            "reason", "two trays stood side by side; the jar was filled from the second animal",
                            "evidence", "photograph of both trays, tissue compared with both jaws"));
            api.post("coordinator", "/specimens/" + swapped + "/re-attribution/" + id + "/confirmation", Map.of());
        }
        api.put(
                "epidemiologist",
                "/animals/" + kit(two.get(3)) + "/same-as/" + kit(two.get(2)),
                Map.of(
                        "reason", "head and nodes of one animal were taken in under two kits",
                        "evidence", "same registration number on both forms"));
    }

    private String accession(String batch, String laboratory) {
        return laboratory + "-" + season.substring(4) + "-" + batch;
    }

    private String kit(Deer d) {
        return kits.get(d.station()).get(d.kit());
    }

    private String code(Deer d, String part) {
        return codes.get(kit(d) + part);
    }

    private static String at(Deer d, int hour, int minute) {
        return at(d.station(), d.diedOn(), hour, minute);
    }

    private static String at(String station, LocalDate day, int hour, int minute) {
        ZoneId zone = ZoneId.of(List.of("ESKER", "GARROW").contains(station) ? "America/Denver" : "America/Chicago");
        return OffsetDateTime.from(day.atTime(hour, minute).atZone(zone)).toString();
    }

    /** Runs independent steps a few at a time; the first fault stops the season. */
    private static void all(List<Deer> deer, Consumer<Deer> step) {
        ExecutorService hands = Executors.newFixedThreadPool(AT_ONCE);
        try {
            List<Future<?>> done = new ArrayList<>();
            deer.forEach(d -> done.add(hands.submit(() -> step.accept(d))));
            for (Future<?> one : done) {
                one.get();
            }
        } catch (ExecutionException e) {
            throw new IllegalStateException(e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        } finally {
            hands.shutdownNow();
        }
    }
}
