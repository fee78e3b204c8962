package org.dentary.prevalence.detection;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import org.dentary.platform.table.CsvTable;

/** The report as CSV: one line a unit, its figures in full precision beside everything they rest on. */
final class ChanceCsv {
    private static final List<String> UNITS = List.of(
            "season",
            "disease",
            "species",
            "unit",
            "unitName",
            "state",
            "tested",
            "detected",
            "pending",
            "target",
            "probability",
            "upperLimit",
            "confidence",
            "designPrevalence",
            "targetProbability",
            "sensitivity",
            "sensitivitySource",
            "herdSize",
            "infected",
            "herdSizeSource",
            "probabilityBelow",
            "prior",
            "introductionRisk",
            "firstSeason",
            "seasons",
            "riskWeightSet",
            "points",
            "pointsRequired",
            "pointsProbability",
            "convention",
            "more",
            "moreAfterPending",
            "concerns");
    private static final List<String> NEXT = List.of(
            "season",
            "unit",
            "unitName",
            "stations",
            "more",
            "ageClass",
            "sex",
            "mortalitySource",
            "relativeRisk",
            "pending",
            "why");

    private ChanceCsv() {}

    static String units(ChanceOfDetection report) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (CsvTable csv = CsvTable.on(out, UNITS)) {
            for (UnitChance unit : report.units()) {
                Assumptions a = unit.assumptions();
                boolean weighted = unit.points() != null;
                csv.row(
                        report.season(),
                        report.disease(),
                        report.species(),
                        unit.unit(),
                        unit.name(),
                        unit.state(),
                        unit.tested(),
                        unit.detected(),
                        unit.pending(),
                        unit.target(),
                        unit.probability(),
                        unit.upperLimit(),
                        report.confidence(),
                        a.designPrevalence(),
                        a.targetProbability(),
                        a.sensitivity(),
                        a.sensitivitySource(),
                        a.herdSize(),
                        a.infected(),
                        a.herdSizeSource(),
                        unit.probabilityBelow(),
                        a.prior(),
                        a.introductionRisk(),
                        unit.seasons().isEmpty() ? null : unit.seasons().get(0).season(),
                        unit.seasons().size(),
                        a.riskWeightSet(),
                        weighted ? unit.points().points() : null,
                        weighted ? unit.points().required() : null,
                        weighted ? unit.points().probability() : null,
                        weighted ? unit.points().convention() : null,
                        unit.more(),
                        unit.moreAfterPending(),
                        String.join(" ", unit.concerns()));
            }
        }
        return out.toString(StandardCharsets.UTF_8);
    }

    /** One line a choice. */
    static String takeNext(String season, List<TakeNext> next) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (CsvTable csv = CsvTable.on(out, NEXT)) {
            for (TakeNext unit : next) {
                String stations =
                        unit.stations().stream().map(TakeNext.Station::code).collect(Collectors.joining(" "));
                for (TakeNext.Choice choice : unit.choices()) {
                    csv.row(
                            season,
                            unit.unit(),
                            unit.unitName(),
                            stations,
                            choice.more(),
                            choice.ageClass(),
                            choice.sex(),
                            choice.mortalitySource(),
                            choice.relativeRisk(),
                            unit.pending(),
                            choice.why());
                }
            }
        }
        return out.toString(StandardCharsets.UTF_8);
    }
}
