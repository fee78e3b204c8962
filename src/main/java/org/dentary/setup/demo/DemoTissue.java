package org.dentary.setup.demo;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;

/** The way of the tissue: handed over, sent, received, reported, confirmed, released. */
final class DemoTissue {
    /** Where the running season brings the first detection; its incident is still open. */
    private static final String FIRST_DETECTION = "U21";

    private final DemoApi api;
    private final String season;
    private final DemoKits kits;

    DemoTissue(DemoApi api, String season, DemoKits kits) {
        this.api = api;
        this.season = season;
        this.kits = kits;
    }

    /** Tissue goes to the laboratory week by week, from each region apart. */
    List<Map.Entry<String, List<Deer>>> batches(List<Deer> deer) {
        return List.copyOf(deer.stream()
                .filter(Deer::tissue)
                .collect(Collectors.groupingBy(DemoTissue::batch, TreeMap::new, Collectors.toList()))
                .entrySet());
    }

    private static String batch(Deer d) {
        return d.diedOn().toEpochDay() / 7 + (DemoCalendar.WEST.contains(d.station()) ? "-west" : "-east");
    }

    /** The running season's last week stays on its way: from the east nobody took it over yet, from the west it was refused. */
    void carry(Map.Entry<String, List<Deer>> week) {
        String batch = week.getKey();
        List<Deer> all = week.getValue();
        List<String> left = all.stream().map(d -> kits.code(d, "NODE_LEFT")).toList();
        LocalDate last = all.get(all.size() - 1).diedOn();
        String station = all.get(0).station();
        if (last.isAfter(DemoCalendar.TODAY.minusDays(10))) {
            offer(batch, left, station, DemoCalendar.TODAY.minusDays(1));
            if (DemoCalendar.WEST.contains(station)) {
                refuse(batch, left);
            }
            return;
        }
        LocalDate handed = last.plusDays(1);
        offer(batch, left, station, handed);
        if (batch.hashCode() % 11 == 0) {
            refuse(batch, left);
            batch += "-again";
            offer(batch, left, station, handed);
        }
        accept(batch, left, station, handed);
        send(week.getKey(), all, station, handed.plusDays(1));
    }

    private void refuse(String batch, List<String> codes) {
        api.post(
                "liaison",
                "/hand-overs/" + DemoApi.key(season, batch, "hand-over") + "/refusal",
                Map.of("codes", codes, "reason", "the cooler was warm; cool it and offer again"));
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
                        DemoCalendar.at(station, day, 17, 0),
                        "enteredAt",
                        DemoCalendar.at(station, day, 17, 5)));
    }

    private void accept(String batch, List<String> codes, String station, LocalDate day) {
        boolean late = batch.hashCode() % 7 == 0;
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("codes", codes);
        body.put("occurredAt", DemoCalendar.at(station, day, 17, 30));
        body.put("enteredAt", DemoCalendar.at(station, late ? day.plusDays(2) : day, 18, 0));
        if (late) {
            body.put("reason", "no signal at the depot; entered from the paper form");
        }
        api.post("liaison", "/hand-overs/" + DemoApi.key(season, batch, "hand-over") + "/acceptance", body);
    }

    private void send(String batch, List<Deer> all, String station, LocalDate day) {
        String path = "/submissions/" + DemoApi.key(season, batch, "submission");
        api.put("liaison", path, Map.of("laboratory", "MEREGATE"));
        all.forEach(d -> api.put(
                "liaison",
                path + "/specimens/" + kits.code(d, "NODE_LEFT"),
                Map.of("packedAt", DemoCalendar.at(station, day, 9, 0))));
        dispatch(path, station, day);
        LocalDate arrived = day.plusDays(2);
        if (!DemoCalendar.isOver(arrived)) {
            return;
        }
        boolean twoShort = season.equals("SY2025") && all.size() > 20 && batch.hashCode() % 3 == 0;
        List<Deer> there = twoShort ? all.subList(0, all.size() - 2) : all;
        receive(path, there, station, arrived);
        report(batch, there, arrived);
    }

    private void dispatch(String path, String station, LocalDate day) {
        String waybill = UUID.nameUUIDFromBytes(path.getBytes(StandardCharsets.UTF_8))
                .toString()
                .substring(0, 8)
                .toUpperCase(Locale.ROOT);
        api.post(
                "liaison",
                path + "/dispatch",
                Map.of(
                        "occurredAt",
                        DemoCalendar.at(station, day, 15, 0),
                        "enteredAt",
                        DemoCalendar.at(station, day, 15, 10),
                        "carrier",
                        "GREYWATER",
                        "waybill",
                        "GW-" + waybill,
                        "shipper",
                        "Trained shipper at the depot"));
    }

    private void receive(String path, List<Deer> all, String station, LocalDate day) {
        api.put(
                "liaison",
                path + "/receipt",
                Map.of(
                        "receivedAt", DemoCalendar.at(station, day, 10, 0),
                        "enteredAt", DemoCalendar.at(station, day, 10, 30),
                        "codes",
                                all.stream().map(d -> kits.code(d, "NODE_LEFT")).toList()));
    }

    private void report(String batch, List<Deer> all, LocalDate arrived) {
        LocalDate reported = arrived.plusDays(8);
        if (!DemoCalendar.isOver(reported)) {
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
            csv.append(kits.code(d, "NODE_LEFT"))
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
        boolean damaged = season.equals(DemoSeason.RUNNING) && reported.getDayOfMonth() <= 7;
        if (damaged) {
            // A spreadsheet made a number of this code: the line waits for the laboratory.
            csv.append("4.07E+11,")
                    .append(accession(batch, "M"))
                    .append(",ELISA,SCREENING,NOT_DETECTED,")
                    .append(reported.minusDays(1))
                    .append(',')
                    .append(reported)
                    .append(",,,")
                    .append(item)
                    .append("\r\n");
        }
        post(batch, "MEREGATE", csv.toString(), damaged ? List.of(item + 1) : List.of());
        if (!suspects.isEmpty()) {
            confirm(batch, suspects, reported.plusDays(2));
        }
    }

    /** What the first laboratory suspects, it forwards to the second. */
    private void confirm(String batch, List<Deer> suspects, LocalDate sent) {
        if (!DemoCalendar.isOver(sent)) {
            return;
        }
        String path = "/submissions/" + DemoApi.key(season, batch, "confirmation");
        String station = suspects.get(0).station();
        api.put("liaison", path, Map.of("laboratory", "STANE", "purpose", "CONFIRMATORY"));
        suspects.forEach(d -> api.put(
                "liaison",
                path + "/specimens/" + kits.code(d, "NODE_LEFT"),
                Map.of(
                        "packedAt",
                        DemoCalendar.at(d.station(), sent, 9, 0),
                        "overrideReason",
                        "forwarded by Meregate by agreement with Stane, fresh tissue past its days")));
        dispatch(path, station, sent);
        if (DemoCalendar.isOver(sent.plusDays(2))) {
            receive(path, suspects, station, sent.plusDays(2));
        }
        if (DemoCalendar.isOver(sent.plusDays(12))) {
            suspects.forEach(d -> confirm(d, sent));
        }
    }

    private void confirm(Deer d, LocalDate sent) {
        Map<String, Object> finding = new LinkedHashMap<>();
        finding.put("specimens", List.of(kits.code(d, "NODE_LEFT")));
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
        boolean waits = season.equals(DemoSeason.RUNNING)
                && (d.number() % 3 == 0 || d.unit().equals(FIRST_DETECTION));
        if (d.infected() && !waits) {
            api.put("coordinator", "/animals/" + kits.kit(d) + "/release", Map.of("disease", "CWD"));
            if (!season.equals(DemoSeason.RUNNING)) {
                tell(d, sent.plusDays(13));
            }
        }
        if (!d.infected()) {
            finding.put("status", "CORRECTED");
            finding.put("corrects", first);
            finding.put("reportedOn", sent.plusDays(12).toString());
            finding.put("measuredValue", "accession number completed by the laboratory");
            api.put("liaison", "/findings/" + DemoApi.key(season, d.number(), "corrected"), finding);
        }
    }

    private void post(String batch, String laboratory, String csv, List<Integer> leaveOut) {
        UUID id = DemoApi.key(season, batch, "results");
        String name = accession(batch, laboratory).toLowerCase(Locale.ROOT) + ".csv";
        api.putCsv("liaison", "/result-imports/" + id + "?laboratory=" + laboratory + "&name=" + name, csv);
        api.post("liaison", "/result-imports/" + id + "/posting", Map.of("leaveOut", leaveOut));
    }

    private String accession(String batch, String laboratory) {
        return laboratory + "-" + season.substring(4) + "-" + batch;
    }

    /** In the past seasons everybody was told; most were reached at the first call. */
    private void tell(Deer d, LocalDate day) {
        String path = "/notifications/" + kits.kit(d) + "/CWD/attempts/";
        if (d.number() % 5 == 0) {
            api.put(
                    "notifier",
                    path + DemoApi.key(season, d.number(), "no answer"),
                    attempt("NO_ANSWER", DemoCalendar.at(d.station(), day, 9, 0)));
        }
        api.put(
                "notifier",
                path + DemoApi.key(season, d.number(), "told"),
                attempt("REACHED", DemoCalendar.at(d.station(), day, 17, 30)));
    }

    private static Map<String, Object> attempt(String result, String at) {
        return Map.of("outcome", "DETECTED", "channel", "PHONE", "result", result, "at", at);
    }
}
