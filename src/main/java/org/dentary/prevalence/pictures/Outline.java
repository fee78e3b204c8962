package org.dentary.prevalence.pictures;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.List;
import org.dentary.plan.UnitBoundary;

/**
 * A unit's boundary as rings of longitude and latitude (GeoJSON, RFC 7946: WGS 84, holes by the even-odd rule).
 *
 * @param unit unit code
 * @param version edition of the boundary
 * @param rings positions of every ring, outer ones and holes
 */
record Outline(String unit, String version, List<List<Point2D.Double>> rings) {
    private static final ObjectMapper JSON = new ObjectMapper();

    static Outline of(UnitBoundary boundary) {
        List<List<Point2D.Double>> rings = new ArrayList<>();
        try {
            JsonNode geometry = JSON.readTree(boundary.boundary());
            JsonNode coordinates = geometry.path("coordinates");
            if (geometry.path("type").asText().equals("Polygon")) {
                add(rings, coordinates);
            } else {
                coordinates.forEach(polygon -> add(rings, polygon));
            }
        } catch (JsonProcessingException fault) {
            throw new IllegalStateException("The boundary of unit " + boundary.unit() + " is not GeoJSON", fault);
        }
        return new Outline(boundary.unit(), boundary.boundaryVersion(), rings);
    }

    private static void add(List<List<Point2D.Double>> rings, JsonNode polygon) {
        for (JsonNode ring : polygon) {
            List<Point2D.Double> positions = new ArrayList<>();
            ring.forEach(p -> positions.add(
                    new Point2D.Double(p.get(0).asDouble(), p.get(1).asDouble())));
            rings.add(positions);
        }
    }

    /** The outline on a plane. */
    Path2D.Double on(Projection projection) {
        Path2D.Double path = new Path2D.Double(Path2D.WIND_EVEN_ODD);
        for (List<Point2D.Double> ring : rings) {
            for (int i = 0; i < ring.size(); i++) {
                Point2D.Double at = projection.of(ring.get(i));
                if (i == 0) {
                    path.moveTo(at.x, at.y);
                } else {
                    path.lineTo(at.x, at.y);
                }
            }
            path.closePath();
        }
        return path;
    }
}
