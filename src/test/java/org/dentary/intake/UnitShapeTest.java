package org.dentary.intake;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import org.dentary.animal.vault.ExactPoint;
import org.dentary.plan.UnitBoundary;
import org.dentary.platform.problem.InvalidInput;
import org.junit.jupiter.api.Test;

/** The polygon with a hole and the multi-polygon are those printed in RFC 7946, appendix A.3 and A.6. */
class UnitShapeTest {
    private static final UnitShape WITH_HOLE = UnitShape.of(new UnitBoundary(
            "U1",
            "{\"type\": \"Polygon\", \"coordinates\": [[[100.0,0.0],[101.0,0.0],[101.0,1.0],[100.0,1.0],[100.0,0.0]],"
                    + "[[100.8,0.8],[100.8,0.2],[100.2,0.2],[100.2,0.8],[100.8,0.8]]]}",
            "2026"));
    private static final UnitShape TWO_PARTS = UnitShape.of(new UnitBoundary(
            "U2",
            "{\"type\": \"MultiPolygon\", \"coordinates\": [[[[102.0,2.0],[103.0,2.0],[103.0,3.0],[102.0,3.0],[102.0,2.0]]],"
                    + "[[[100.0,0.0],[101.0,0.0],[101.0,1.0],[100.0,1.0],[100.0,0.0]],"
                    + "[[100.2,0.2],[100.2,0.8],[100.8,0.8],[100.8,0.2],[100.2,0.2]]]]}",
            "2026"));

    @Test
    void holesAreOutsideAndPartsAreInside() {
        assertTrue(WITH_HOLE.contains(100.1, 0.5));
        assertFalse(WITH_HOLE.contains(100.5, 0.5));
        assertFalse(WITH_HOLE.contains(101.5, 0.5));
        assertFalse(WITH_HOLE.contains(100.1, 1.5));
        assertTrue(TWO_PARTS.contains(102.5, 2.5));
        assertTrue(TWO_PARTS.contains(100.9, 0.9));
        assertFalse(TWO_PARTS.contains(101.5, 1.5));
    }

    /** A degree of a meridian is 111.2 km on a sphere of 6,371 km: 2 pi 6371 / 360. */
    @Test
    void theDistanceIsToTheNearestLine() {
        assertEquals(0, WITH_HOLE.metersTo(100.9, 0.9));
        assertEquals(11_119, WITH_HOLE.metersTo(100.5, 1.1), 2);
        assertEquals(0.3 * 111_195, WITH_HOLE.metersTo(100.5, 0.5), 20);
        assertEquals(Math.hypot(0.1, 0.1) * 111_195, WITH_HOLE.metersTo(101.1, -0.1), 20);
    }

    @Test
    void aPointOutsideIsRefusedAsFarAsItIsCertain() {
        List<UnitShape> shapes = List.of(WITH_HOLE, TWO_PARTS);
        InvalidInput refusal = assertThrows(
                InvalidInput.class, () -> PrivateRules.requireWithin("U1", point(2.5, 102.5, null), shapes));
        String said = refusal.errors().get(0).message();
        assertTrue(said.contains("km outside unit U1 (boundaries, edition 2026), in unit U2"), said);
        assertEquals("POINT_OUTSIDE_UNIT", refusal.errors().get(0).rule());
        assertDoesNotThrow(() -> PrivateRules.requireWithin("U1", point(1.1, 100.5, 11_200), shapes));
        assertThrows(InvalidInput.class, () -> PrivateRules.requireWithin("U1", point(1.1, 100.5, 11_000), shapes));
        assertDoesNotThrow(() -> PrivateRules.requireWithin("U1", point(0.5, 100.1, null), shapes));
        assertDoesNotThrow(() -> PrivateRules.requireWithin("U3", point(2.5, 102.5, null), shapes), "no boundary");
        assertDoesNotThrow(() -> PrivateRules.requireWithin(null, point(2.5, 102.5, null), shapes), "unknown unit");
        assertDoesNotThrow(
                () -> PrivateRules.requireWithin("U1", new ExactPoint(null, null, null, "by the mill"), shapes));
    }

    private static ExactPoint point(double latitude, double longitude, Integer uncertainty) {
        return new ExactPoint(BigDecimal.valueOf(latitude), BigDecimal.valueOf(longitude), uncertainty, null);
    }
}
