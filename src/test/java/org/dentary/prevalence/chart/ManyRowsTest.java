package org.dentary.prevalence.chart;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.XYPlot;
import org.jfree.svg.SVGGraphics2D;
import org.junit.jupiter.api.Test;

/** Pictures of more rows or marks than a picture can tell apart. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ManyRowsTest {
    private static final List<String> SOURCES =
            List.of("HUNTER_HARVEST", "VEHICLE", "FOUND_DEAD", "PREDATOR", "AGENCY_REMOVAL", "DAMAGE_PERMIT", "OTHER");

    @Inject
    LineFixture lines;

    private static Response of(String form, String query) {
        return given().auth()
                .preemptive()
                .basic("epidemiologist", SeasonFixture.PASSWORD)
                .get("/api/v1/prevalence" + form + "?" + query)
                .then()
                .statusCode(200)
                .extract()
                .response();
    }

    /** What is drawn, without the words for those who do not see it. */
    private static String drawn(String query) {
        return of(".svg", query).asString().replaceFirst("(?s)<desc>.*?</desc>", "");
    }

    @Test
    void theLastDimensionIsToldByShapesOnlyWhereThereAreEnough() {
        String season = lines.season();
        lines.add(season, 40, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        String bySex = drawn("season=" + season + "&by=ageClass,sex");
        assertTrue(bySex.contains(">Female<"), bySex);
        assertFalse(bySex.contains(">Adult, Female<"), bySex);
        SOURCES.forEach(source ->
                lines.add(season, 2, ALine.of("ADULT", "MALE", "NOT_DETECTED").from(source)));
        String bySource = drawn("season=" + season + "&by=ageClass,mortalitySource&mortalitySource="
                + String.join("&mortalitySource=", SOURCES));
        assertTrue(bySource.contains(">Adult, Hunter harvest<"), bySource);
        assertFalse(bySource.contains(">Hunter harvest<"), bySource);
    }

    @Test
    void aPictureOfManyRowsEndsAndSaysSo() {
        assertEquals(12, ChartFrame.rows(12, 26));
        assertEquals(307, ChartFrame.rows(1_200, 26));
        assertTrue(below(307, 1_200).contains("The first 307 of 1,200 rows; all are in the table."));
        assertFalse(below(12, 12).contains("The first"));
    }

    private static String below(int shown, int all) {
        JFreeChart chart = ChartFrame.chart(new XYPlot(), false, ChartInks.PAPER);
        ChartFrame.tellLeftOut(chart, shown, all, ChartInks.PAPER);
        SVGGraphics2D canvas = new SVGGraphics2D(720, 380);
        chart.draw(canvas, new Rectangle2D.Double(0, 0, 720, 380));
        return canvas.getSVGElement();
    }
}
