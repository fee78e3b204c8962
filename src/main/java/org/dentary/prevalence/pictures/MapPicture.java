package org.dentary.prevalence.pictures;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.dentary.prevalence.detection.ChanceOfDetection;
import org.dentary.prevalence.detection.UnitChance;
import org.dentary.prevalence.pictures.Picture.Column;

/** The map of management units, shaded by how much was tested, detected, or can be ruled out. */
final class MapPicture {
    private MapPicture() {}

    /** @param what disease and season, as people call them */
    static Picture of(ChanceOfDetection report, List<Outline> outlines, Shading shading, String what) {
        Map<String, UnitChance> units =
                report.units().stream().collect(Collectors.toMap(UnitChance::unit, Function.identity()));
        List<Outline> drawn = outlines.stream()
                .filter(outline -> units.containsKey(outline.unit()))
                .toList();
        Map<String, String> versions =
                drawn.stream().collect(Collectors.toMap(Outline::unit, outline -> "edition " + outline.version()));
        String editions =
                drawn.stream().map(Outline::version).distinct().sorted().collect(Collectors.joining(", "));
        List<String> missing = report.units().stream()
                .filter(unit -> !versions.containsKey(unit.unit()))
                .map(UnitChance::name)
                .toList();
        return new Picture(
                "map",
                "Management units by " + shading.words() + ": " + what,
                "Closer hatching is more, and each unit has its number; a unit with a detection has a thick outline and a diamond."
                        + (drawn.isEmpty() ? "" : " Boundaries: WGS 84, edition " + editions + ", equirectangular.")
                        + (missing.isEmpty()
                                ? ""
                                : " Without a boundary in the plan and not drawn: " + String.join(", ", missing) + "."),
                report.units().stream()
                        .map(unit -> unit.name() + ": " + shading.told(unit))
                        .collect(Collectors.joining("; ")),
                List.of(
                        Column.text("unit", "Unit"),
                        Column.text("unitName", "Name"),
                        Column.number("tested", "Tested"),
                        Column.number("detected", "Detected"),
                        Column.share("probability", "Chance of detection"),
                        Column.text("boundary", "Boundary")),
                report.units().stream().map(unit -> row(unit, versions)).toList(),
                (inks, narrow) -> new MapDrawing(units, drawn, shading, inks, narrow).plate());
    }

    private static List<Object> row(UnitChance unit, Map<String, String> versions) {
        List<Object> row = new ArrayList<>();
        row.add(unit.unit());
        row.add(unit.name());
        row.add(unit.tested());
        row.add(unit.detected());
        row.add(unit.judged());
        row.add(versions.getOrDefault(unit.unit(), "none"));
        return row;
    }
}
