package org.dentary.setup.demo;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/**
 * Draws the demo's deer. The same seed draws the same deer. The true prevalence by age class, sex and region that it
 * draws from is {@link #truth}; it is invented, with the trade's usual pattern (more in older animals and in males).
 */
public final class DeerDraw {
    /** Seed of the committed truth table. */
    public static final long SEED = 20_261_125L;

    private static final String[] STATIONS = {"ALDER", "BRINDLE", "HARROW", "DUNMERE", "ESKER", "GARROW"};
    private static final String[][] UNITS = {{"U11"}, {"U12"}, {"U13"}, {"U14"}, {"U21", "U22"}, {"U23", "U24"}};
    private static final int[] SHARES = {24, 18, 16, 14, 16, 12};
    private static final Map<String, Integer> PER_SEASON = new java.util.LinkedHashMap<>();

    static {
        PER_SEASON.put("SY2023", 420);
        PER_SEASON.put("SY2024", 500);
        PER_SEASON.put("SY2025", 560);
        PER_SEASON.put("SY2026", 480);
    }

    private final Random random;

    private DeerDraw(long seed) {
        this.random = new Random(seed);
    }

    /** The whole draw, about two thousand deer in four seasons, in the order of death within a season. */
    public static List<Deer> draw(long seed) {
        return new DeerDraw(seed).draw();
    }

    /** The true prevalence among deer of a class, in [0, 1]. */
    public static double truth(String season, String unit, String ageClass, String sex) {
        double base = switch (ageClass) {
            case "FAWN" -> 0.004;
            case "YEARLING" -> 0.03;
            default -> 0.07;
        };
        double bySex = sex.equals("MALE") ? 1.7 : 0.8;
        double byUnit = switch (unit) {
            case "U11" -> 1.6;
            case "U12" -> 1.2;
            case "U14", "U24" -> 0;
            case "U21", "U22", "U23" -> 0.5;
            default -> 0.9;
        };
        double byYear = 1 + 0.12 * (Integer.parseInt(season.substring(2)) - 2023);
        return base * bySex * byUnit * byYear;
    }

    private List<Deer> draw() {
        List<Deer> deer = new ArrayList<>();
        for (Map.Entry<String, Integer> season : PER_SEASON.entrySet()) {
            Map<String, Integer> kits = new HashMap<>();
            boolean running = season.getKey().equals("SY2026");
            List<LocalDate> days = new ArrayList<>();
            for (int i = 0; i < season.getValue(); i++) {
                days.add(day(season.getKey(), running));
            }
            days.sort(LocalDate::compareTo);
            for (LocalDate day : days) {
                int at = weighted(SHARES);
                int kit = kits.merge(STATIONS[at], 1, Integer::sum) - 1;
                deer.add(one(deer.size(), season.getKey(), at, kit, day, running));
            }
        }
        return deer;
    }

    private LocalDate day(String season, boolean running) {
        int year = Integer.parseInt(season.substring(2));
        LocalDate opening = LocalDate.of(year, 9, 15);
        int span = running ? 64 : 140;
        double where = running ? Math.pow(random.nextDouble(), 0.7) : (random.nextGaussian() * 0.16 + 0.45);
        int day = (int) Math.round(Math.max(0, Math.min(1, where)) * span);
        return opening.plusDays(day);
    }

    private Deer one(int number, String season, int at, int kit, LocalDate day, boolean running) {
        String[] units = UNITS[at];
        String unit = random.nextDouble() < 0.02 ? "UNKNOWN" : units[random.nextInt(units.length)];
        int how = weighted(82, 9, 4, 3, 2);
        String source =
                new String[] {"HUNTER_HARVEST", "VEHICLE", "FOUND_DEAD", "AGENCY_REMOVAL", "DAMAGE_PERMIT"}[how];
        String route = how > 0
                ? "FIELD"
                : new String[] {"STATION", "PROCESSOR", "DROP_OFF", "TAXIDERMIST"}[weighted(70, 14, 12, 4)];
        boolean taxidermist = route.equals("TAXIDERMIST");
        String sex = taxidermist || random.nextDouble() < 0.56 ? "MALE" : "FEMALE";
        String age = taxidermist ? "ADULT" : new String[] {"FAWN", "YEARLING", "ADULT"}[weighted(16, 27, 57)];
        String truthUnit = unit.equals("UNKNOWN") ? units[0] : unit;
        boolean sick = source.equals("FOUND_DEAD") && random.nextDouble() < 0.5;
        double prevalence = truth(season, truthUnit, age, sex) * (sick ? 6 : source.equals("FOUND_DEAD") ? 2 : 1);
        boolean infected = random.nextDouble() < Math.min(0.9, prevalence);
        boolean tissue = random.nextDouble() < (age.equals("FAWN") ? 0.6 : 0.95);
        boolean recent = running && day.isAfter(LocalDate.of(2026, 11, 4));
        return new Deer(
                number,
                season,
                STATIONS[at],
                kit,
                unit,
                day,
                random.nextDouble() < 0.015 ? "UNKNOWN" : sex,
                random.nextDouble() < 0.85 ? "GENITALIA_OR_UDDER" : "HEAD_ONLY",
                age,
                source,
                route,
                sick ? "SEEN" : random.nextDouble() < 0.7 ? "NONE_SEEN" : "NOT_OBSERVED",
                sick ? "TARGETED" : basis(),
                tissue,
                infected,
                tissue && !recent ? finding(infected) : null,
                new String[] {"AT_INTAKE", "LATER", "NEVER", "BLIND_TWICE"}[weighted(80, 11, 5, 4)]);
    }

    private String basis() {
        return new String[] {"VOLUNTARY", "MANDATORY", "QUOTA", "HUNTER_REQUESTED"}[weighted(60, 22, 12, 6)];
    }

    /** The screening's word: tissue unsuitable in 3 %, sensitivity 0.94, one false suspicion in 500. */
    private String finding(boolean infected) {
        double draw = random.nextDouble();
        if (draw < 0.03) {
            return "UNSUITABLE";
        }
        if (draw < 0.034) {
            return "INCONCLUSIVE";
        }
        boolean reactive = infected ? random.nextDouble() < 0.94 : random.nextDouble() < 0.002;
        return reactive ? "SUSPECT" : "NOT_DETECTED";
    }

    private int weighted(int... weights) {
        int sum = 0;
        for (int weight : weights) {
            sum += weight;
        }
        int draw = random.nextInt(sum);
        for (int i = 0; i < weights.length; i++) {
            draw -= weights[i];
            if (draw < 0) {
                return i;
            }
        }
        throw new IllegalStateException("weights do not add up");
    }
}
