package org.dentary.setup.list;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Geometries of RFC 7946, appendix A, and what its section 3.1 forbids. */
class BoundaryTest {
    // RFC 7946, A.3, "No holes" and "With holes"
    private static final String NO_HOLES = """
            {"type": "Polygon", "coordinates": [[[100.0, 0.0], [101.0, 0.0], [101.0, 1.0], [100.0, 1.0], [100.0, 0.0]]]}
            """;
    private static final String WITH_HOLES = """
            {"type": "Polygon", "coordinates": [
                [[100.0, 0.0], [101.0, 0.0], [101.0, 1.0], [100.0, 1.0], [100.0, 0.0]],
                [[100.8, 0.8], [100.8, 0.2], [100.2, 0.2], [100.2, 0.8], [100.8, 0.8]]]}
            """;
    // RFC 7946, A.6
    private static final String SEVERAL = """
            {"type": "MultiPolygon", "coordinates": [
                [[[102.0, 2.0], [103.0, 2.0], [103.0, 3.0], [102.0, 3.0], [102.0, 2.0]]],
                [[[100.0, 0.0], [101.0, 0.0], [101.0, 1.0], [100.0, 1.0], [100.0, 0.0]],
                 [[100.2, 0.2], [100.2, 0.8], [100.8, 0.8], [100.8, 0.2], [100.2, 0.2]]]]}
            """;

    @Test
    void theExamplesOfTheStandardAreTaken() {
        assertEquals(Optional.empty(), Boundary.fault(NO_HOLES));
        assertEquals(Optional.empty(), Boundary.fault(WITH_HOLES));
        assertEquals(Optional.empty(), Boundary.fault(SEVERAL));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{'type':'Point','coordinates':[100,0]} | the type is neither Polygon nor MultiPolygon",
                "{'type':'Polygon','coordinates':[]} | it has no ring",
                "{'type':'Polygon','coordinates':[[[0,0],[1,0],[0,0]]]} | a ring has fewer than four positions",
                "{'type':'Polygon','coordinates':[[[0,0],[1,0],[1,1],[0,1]]]} | a ring does not end where it begins",
                "{'type':'Polygon','coordinates':[[[44,-100],[45,-100],[45,-99],[44,-100]]]} | [44,-100] is no longitude and latitude in degrees",
                "{'type':'MultiPolygon','coordinates':[]} | it has no polygon",
                "U11 | it is not JSON"
            },
            quoteCharacter = '`')
    void whatTheStandardForbidsIsNamed(String geometry, String fault) {
        assertEquals(Optional.of(fault), Boundary.fault(geometry.replace('\'', '"')));
    }

    /** RFC 7946, section 4: WGS 84 alone; the member crs is of the specification of 2008, section 3. */
    @Test
    void anotherCoordinateReferenceSystemIsNamed() {
        String other = "{\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"urn:ogc:def:crs:EPSG::26915\"}},";
        String own = "{\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"urn:ogc:def:crs:OGC:1.3:CRS84\"}},";
        String rest = NO_HOLES.trim().substring(1);
        assertEquals(
                Optional.of("its coordinate reference system is not WGS 84 (RFC 7946, 4); convert it first"),
                Boundary.fault(other + rest));
        assertEquals(Optional.empty(), Boundary.fault(own + rest));
        String collection = "\"type\":\"FeatureCollection\",\"features\":[]}";
        assertTrue(Boundary.isInAnotherSystem(other + collection));
        assertFalse(Boundary.isInAnotherSystem(own + collection));
    }
}
