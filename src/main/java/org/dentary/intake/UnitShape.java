package org.dentary.intake;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import org.dentary.plan.UnitBoundary;

/**
 * A management unit's boundary, to hold a point against it (GeoJSON, RFC 7946: WGS 84, longitude first; holes by the even-odd rule).
 *
 * @param rings outer rings and holes, each a list of {longitude, latitude} in degrees
 */
record UnitShape(String unit, String edition, List<double[][]> rings) {
    /** Mean radius of the earth in meters, (2a + b)/3 of WGS 84 (Moritz 2000, J Geod 74:128-133; the value from memory). */
    private static final double RADIUS = 6_371_008.8;

    private static final ObjectMapper JSON = new ObjectMapper();

    static UnitShape of(UnitBoundary boundary) {
        List<double[][]> rings = new ArrayList<>();
        try {
            JsonNode geometry = JSON.readTree(boundary.boundary());
            JsonNode coordinates = geometry.path("coordinates");
            if (geometry.path("type").asText().equals("Polygon")) {
                coordinates.forEach(ring -> rings.add(ring(ring)));
            } else {
                coordinates.forEach(polygon -> polygon.forEach(ring -> rings.add(ring(ring))));
            }
        } catch (JsonProcessingException fault) {
            throw new IllegalStateException("The boundary of unit " + boundary.unit() + " is not GeoJSON", fault);
        }
        return new UnitShape(boundary.unit(), boundary.boundaryVersion(), List.copyOf(rings));
    }

    private static double[][] ring(JsonNode positions) {
        double[][] ring = new double[positions.size()][];
        for (int i = 0; i < ring.length; i++) {
            ring[i] = new double[] {
                positions.get(i).get(0).asDouble(), positions.get(i).get(1).asDouble()
            };
        }
        return ring;
    }

    /** Whether the point lies within; on the line itself either may be said. */
    boolean contains(double longitude, double latitude) {
        Path2D outline = new Path2D.Double(Path2D.WIND_EVEN_ODD);
        for (double[][] ring : rings) {
            outline.moveTo(ring[0][0], ring[0][1]);
            for (double[] corner : ring) {
                outline.lineTo(corner[0], corner[1]);
            }
            outline.closePath();
        }
        return outline.contains(longitude, latitude);
    }

    /**
     * Meters from the point to the unit: 0 within, else to the nearest line. Measured on a plane that touches the earth at the point,
     * which is exact enough over the tens of kilometers that matter here.
     */
    double metersTo(double longitude, double latitude) {
        if (contains(longitude, latitude)) {
            return 0;
        }
        double north = RADIUS * Math.toRadians(1);
        double east = north * Math.cos(Math.toRadians(latitude));
        double nearest = Double.POSITIVE_INFINITY;
        for (double[][] ring : rings) {
            for (int i = 1; i < ring.length; i++) {
                nearest = Math.min(
                        nearest,
                        Line2D.ptSegDist(
                                (ring[i - 1][0] - longitude) * east,
                                (ring[i - 1][1] - latitude) * north,
                                (ring[i][0] - longitude) * east,
                                (ring[i][1] - latitude) * north,
                                0,
                                0));
            }
        }
        return nearest;
    }
}
