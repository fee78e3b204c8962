package org.dentary.setup.demo;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The stations' part: deer taken in, jaws read at the table, later, and blind by a second reader. */
final class DemoIntake {
    private static final List<String> FIRST_NAMES = List.of(
            "Ansel", "Birgit", "Caspar", "Delia", "Edvin", "Frida", "Gunnar", "Hedda", "Ivo", "Jorun", "Kasper");
    private static final List<String> LAST_NAMES =
            List.of("Aldergate", "Brackwater", "Corrin", "Dunmere", "Eastlake", "Farrow", "Glenwick", "Harrowby");
    private static final List<String> STREETS =
            List.of("Larch Lane", "Mill Road", "Quarry Street", "River Bend", "Station Road");

    private final DemoApi api;
    private final String season;
    private final DemoKits kits;

    DemoIntake(DemoApi api, String season, DemoKits kits) {
        this.api = api;
        this.season = season;
        this.kits = kits;
    }

    void takeIn(Deer d) {
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
            body.put("jawReading", reading(d, "first", DemoCalendar.at(d, 10, 20)));
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
        if (season.equals(DemoSeason.RUNNING) && d.source().equals("HUNTER_HARVEST")) {
            body.put("contact", contact(d));
        }
        body.put("enteredAt", DemoCalendar.at(d, 11, 0));
        if (d.tissue()) {
            body.put(
                    "specimens",
                    List.of(Map.of(
                            "code",
                            kits.code(d, "NODE_LEFT"),
                            "tissue",
                            "MEDIAL_RETROPHARYNGEAL_NODE",
                            "side",
                            "LEFT",
                            "preservation",
                            "FRESH_CHILLED",
                            "condition",
                            "UNSUITABLE".equals(d.finding()) ? "SOFT" : "GOOD",
                            "collectedAt",
                            DemoCalendar.at(d, 10, 45))));
        }
        api.put("sampler", "/animals/" + kits.kit(d), body);
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

    void readJawLater(Deer d) {
        LocalDate day = d.diedOn().plusDays(16);
        if (day.isBefore(DemoCalendar.TODAY)) {
            api.put(
                    "coordinator",
                    "/animals/" + kits.kit(d) + "/jaw-readings/" + DemoApi.key(season, d.number(), "first"),
                    reading(d, null, DemoCalendar.at(d.station(), day, 14, 0)));
        }
    }

    void readAgain(Deer d) {
        LocalDate day = d.diedOn().plusDays(6);
        if (day.isBefore(DemoCalendar.TODAY)) {
            api.put(
                    "coordinator",
                    "/animals/" + kits.kit(d) + "/jaw-readings/" + DemoApi.key(season, d.number(), "second"),
                    reading(d.number() % 9 == 0 ? older(d) : d, null, DemoCalendar.at(d.station(), day, 15, 0)));
        }
    }

    /** Some deer were marked as fawns; the list of marks is gone through weeks later and stands against what was read. */
    void lookUpMark(Deer d) {
        api.put(
                "coordinator",
                "/animals/" + kits.kit(d) + "/jaw-readings/" + DemoApi.key(season, d.number(), "mark"),
                Map.of(
                        "readAt",
                        DemoCalendar.at(d.station(), d.diedOn().plusDays(30), 9, 0),
                        "method",
                        "KNOWN_AGE_MARK",
                        "examinersClass",
                        d.number() % 20 == 0 && d.ageClass().equals("ADULT") ? "YEARLING" : d.ageClass()));
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
}
