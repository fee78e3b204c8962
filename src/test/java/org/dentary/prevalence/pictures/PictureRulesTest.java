package org.dentary.prevalence.pictures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.dentary.plan.UnitBoundary;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.chart.PrevalenceChart.Use;
import org.dentary.prevalence.pictures.PictureQueries.Waited;
import org.dentary.prevalence.pictures.PictureQueries.Week;
import org.dentary.prevalence.pictures.TurnaroundPicture.Laboratory;
import org.jfree.svg.SVGGraphics2D;
import org.junit.jupiter.api.Test;

class PictureRulesTest {
    // RFC 7946, A.6: two polygons, the second with a hole
    private static final String SEVERAL = """
            {"type": "MultiPolygon", "coordinates": [
                [[[102.0, 2.0], [103.0, 2.0], [103.0, 3.0], [102.0, 3.0], [102.0, 2.0]]],
                [[[100.0, 0.0], [101.0, 0.0], [101.0, 1.0], [100.0, 1.0], [100.0, 0.0]],
                 [[100.2, 0.2], [100.2, 0.8], [100.8, 0.8], [100.8, 0.2], [100.2, 0.2]]]]}
            """;

    @Test
    void projectsAsTheFormulaSays() {
        // A degree square at 60 degrees north: cos 60 = 1/2, so it is half as wide as high
        // (Snyder 1987, Map Projections, USGS Professional Paper 1395, p. 90-91: x = R dlon cos(lat1), y = R dlat).
        Outline square = Outline.of(new UnitBoundary(
                "U",
                "{\"type\":\"Polygon\",\"coordinates\":[[[-100,59.5],[-99,59.5],[-99,60.5],[-100,60.5],[-100,59.5]]]}",
                "1"));
        Projection.Fitted fitted = Projection.fit(List.of(square), 720, 400, 10);
        Point2D.Double northWest = fitted.projection().of(new Point2D.Double(-100, 60.5));
        Point2D.Double southEast = fitted.projection().of(new Point2D.Double(-99, 59.5));
        assertEquals(0.5, (southEast.x - northWest.x) / (southEast.y - northWest.y), 1e-9);
        // north is up, all of it fits, centered
        assertEquals(10, northWest.y, 1e-9);
        assertEquals(390, southEast.y, 1e-9);
        assertEquals(720, northWest.x + southEast.x, 1e-9);
        assertEquals(400, fitted.height());
    }

    @Test
    void severalPolygonsAndHolesStay() {
        Outline outline = Outline.of(new UnitBoundary("U", SEVERAL, "2"));
        assertEquals(3, outline.rings().size());
        Projection projection = Projection.fit(List.of(outline), 720, 600, 0).projection();
        Path2D path = outline.on(projection);
        assertTrue(path.contains(projection.of(new Point2D.Double(102.5, 2.5))));
        assertTrue(path.contains(projection.of(new Point2D.Double(100.1, 0.5))));
        assertTrue(!path.contains(projection.of(new Point2D.Double(100.5, 0.5))), "a hole is not the unit");
    }

    @Test
    void aLabelLiesInsideAUnitWhoseMiddleDoesNot() {
        // a U, open to the north: the middle of its box lies outside it
        Path2D.Double path = new Path2D.Double();
        double[][] at = {{0, 0}, {0, 90}, {90, 90}, {90, 0}, {60, 0}, {60, 70}, {20, 70}, {20, 0}};
        path.moveTo(at[0][0], at[0][1]);
        for (double[] p : at) {
            path.lineTo(p[0], p[1]);
        }
        path.closePath();
        assertTrue(!path.contains(45, 45));
        Point2D.Double inside = MapDrawing.inside(path);
        assertTrue(path.contains(inside), inside.toString());
        assertEquals(75, inside.x, 1);
    }

    @Test
    void quantilesAreThoseOfR() {
        // R 4.2.2, src/test/resources/prevalence/chance.R: quantile(x, c(.25, .5, .75, .9), type = 1) gives 3 5 8 8
        Laboratory laboratory = Laboratory.of(
                "L",
                List.of(
                        new Waited("L", 10, 2, 3),
                        new Waited("L", 10, 3, 4),
                        new Waited("L", 10, 5, 2),
                        new Waited("L", 10, 8, 5),
                        new Waited("L", 10, 13, 1)));
        assertEquals(new Laboratory("L", 15, 3, 5, 8, 8, 10), laboratory);
    }

    @Test
    void weeksInWhichNothingHappenedAreThereToo() {
        LocalDate first = LocalDate.of(2026, 11, 2);
        List<Week> whole = WeeksPicture.whole(List.of(new Week(first, 3, 0, 0), new Week(first.plusWeeks(3), 0, 2, 1)));
        assertEquals(4, whole.size());
        assertEquals(new Week(first.plusWeeks(1), 0, 0, 0), whole.get(1));
    }

    @Test
    void weeksHaveTheirTicksAtTheirMondays() {
        LocalDate first = LocalDate.of(2026, 11, 2);
        Week last = new Week(first.plusWeeks(6), 0, 0, 1);
        String drawn = WeeksPicture.of("Test", List.of(new Week(first, 1, 0, 0), last))
                .svg(Use.FILE)
                .replaceFirst("(?s)<desc>.*?</desc>", "");
        for (int week = 0; week < 7; week++) {
            String day = DateTimeFormatter.ofPattern("MMM d", Locale.US).format(first.plusWeeks(week));
            assertTrue(drawn.contains(">" + day + "<"), day + " in " + drawn);
        }
    }

    @Test
    void aMistypedYearDoesNotMakeAPictureOfCenturies() {
        Week mistyped = new Week(LocalDate.of(1026, 11, 2), 0, 1, 0);
        Week right = new Week(LocalDate.of(2026, 11, 2), 3, 0, 0);
        assertEquals(List.of(mistyped, right), WeeksPicture.whole(List.of(mistyped, right)));
    }

    @Test
    void aShadingThatThereIsNotNamesThoseThatThereAre() {
        InvalidInput refusal = assertThrows(InvalidInput.class, () -> Shading.of("altitude"));
        assertTrue(refusal.getMessage().contains("tested, detected, chance"));
        assertEquals(Shading.TESTED, Shading.of(null));
        assertEquals("from 95 %", Shading.CHANCE.from(4));
    }

    @Test
    void anAxisOfCountsSaysEachNumberOnceHoweverFewThereAre() {
        Picture.Plate plate = TurnaroundPicture.of("CWD, P", List.of()).onPaper();
        SVGGraphics2D canvas = new SVGGraphics2D(plate.width(), plate.height());
        plate.draw().accept(canvas);
        List<String> numbers = Pattern.compile(">(\\d+)<")
                .matcher(canvas.getSVGElement())
                .results()
                .map(found -> found.group(1))
                .toList();
        assertEquals(List.of("0", "1"), numbers);
    }
}
