package org.dentary.setup.list;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Boundaries as GeoJSON (RFC 7946): Polygon or MultiPolygon, WGS 84, longitude before latitude. */
public final class Boundary {
    private static final ObjectMapper JSON = new ObjectMapper();

    private Boundary() {}

    /** What is wrong with a geometry, or empty; holes are allowed, winding is not judged (RFC 7946, 3.1.6). */
    public static Optional<String> fault(String text) {
        try {
            JsonNode geometry = JSON.readTree(text);
            if (!isWgs84(geometry)) {
                return Optional.of("its coordinate reference system is not WGS 84 (RFC 7946, 4); convert it first");
            }
            return switch (geometry.path("type").asText()) {
                case "Polygon" -> polygonFault(geometry.path("coordinates"));
                case "MultiPolygon" -> polygonsFault(geometry.path("coordinates"));
                default -> Optional.of("the type is neither Polygon nor MultiPolygon");
            };
        } catch (JsonProcessingException e) {
            return Optional.of("it is not JSON");
        }
    }

    /** The features of a FeatureCollection as lines: code (from the property of that name) and geometry. */
    public static Optional<List<List<String>>> features(String text) {
        try {
            JsonNode collection = JSON.readTree(text);
            if (!collection.path("type").asText().equals("FeatureCollection")) {
                return Optional.empty();
            }
            List<List<String>> lines = new ArrayList<>();
            for (JsonNode feature : collection.path("features")) {
                JsonNode properties = feature.path("properties");
                lines.add(List.of(
                        properties.path("code").asText(""),
                        feature.path("geometry").toString(),
                        properties.path("boundary_version").asText("1")));
            }
            return Optional.of(lines);
        } catch (JsonProcessingException e) {
            return Optional.empty();
        }
    }

    /** Whether a collection says that its coordinates are in another system; RFC 7946 knows WGS 84 alone. */
    public static boolean isInAnotherSystem(String text) {
        try {
            return !isWgs84(JSON.readTree(text));
        } catch (JsonProcessingException e) {
            return false;
        }
    }

    /** The member {@code crs} of GeoJSON's draft of 2008, which RFC 7946 took away, still comes from older programs. */
    private static boolean isWgs84(JsonNode object) {
        String name = object.path("crs").path("properties").path("name").asText("CRS84");
        return name.endsWith("CRS84") || name.endsWith(":4326") || name.equals("EPSG:4326");
    }

    private static Optional<String> polygonsFault(JsonNode polygons) {
        if (!polygons.isArray() || polygons.isEmpty()) {
            return Optional.of("it has no polygon");
        }
        for (JsonNode polygon : polygons) {
            Optional<String> fault = polygonFault(polygon);
            if (fault.isPresent()) {
                return fault;
            }
        }
        return Optional.empty();
    }

    private static Optional<String> polygonFault(JsonNode rings) {
        if (!rings.isArray() || rings.isEmpty()) {
            return Optional.of("it has no ring");
        }
        for (JsonNode ring : rings) {
            if (!ring.isArray() || ring.size() < 4) {
                return Optional.of("a ring has fewer than four positions");
            }
            if (!ring.get(0).equals(ring.get(ring.size() - 1))) {
                return Optional.of("a ring does not end where it begins");
            }
            for (JsonNode position : ring) {
                if (!isPosition(position)) {
                    return Optional.of(position + " is no longitude and latitude in degrees");
                }
            }
        }
        return Optional.empty();
    }

    private static boolean isPosition(JsonNode position) {
        return position.isArray()
                && position.size() >= 2
                && position.get(0).isNumber()
                && position.get(1).isNumber()
                && Math.abs(position.get(0).asDouble()) <= 180
                && Math.abs(position.get(1).asDouble()) <= 90;
    }
}
