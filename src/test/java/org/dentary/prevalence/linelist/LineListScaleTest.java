package org.dentary.prevalence.linelist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.HttpURLConnection;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.jboss.logging.Logger;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A line list far larger than the memory it may take: the export streams, whatever its length. */
@Tag("slow")
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class LineListScaleTest {
    private static final Logger LOG = Logger.getLogger(LineListScaleTest.class);
    private static final int LINES = 300_000;
    private static final int AT_ONCE = 20_000;
    private static final int LOOK_EVERY = 60_000;
    /** All rows at once would take about 400 MB. */
    private static final long MOST_BYTES = 48L << 20;

    @TestHTTPResource
    URI root;

    @Inject
    LineFixture lines;

    @Test
    void theExportOfALargeSeasonHoldsMemoryFlat() throws IOException {
        String season = lines.season();
        long begin = System.nanoTime();
        for (int made = 0; made < LINES; made += AT_ONCE) {
            lines.add(season, AT_ONCE, ALine.of("ADULT", "FEMALE", "NOT_DETECTED"));
        }
        LOG.infof("%,d lines made in %.1f s", LINES, seconds(begin));
        begin = System.nanoTime();
        long before = live();
        long most = 0;
        int rows = 0;
        long characters = 0;
        HttpURLConnection export = (HttpURLConnection)
                root.resolve("/api/v1/line-list.csv?season=" + season).toURL().openConnection();
        export.setRequestProperty(
                "Authorization",
                "Basic "
                        + Base64.getEncoder()
                                .encodeToString(
                                        ("epidemiologist:" + SeasonFixture.PASSWORD).getBytes(StandardCharsets.UTF_8)));
        try (BufferedReader csv =
                new BufferedReader(new InputStreamReader(export.getInputStream(), StandardCharsets.UTF_8))) {
            assertTrue(csv.readLine().startsWith("kit,season,"));
            String line;
            while ((line = csv.readLine()) != null) {
                rows++;
                characters += line.length();
                if (rows % LOOK_EVERY == 0) {
                    most = Math.max(most, live() - before);
                }
            }
        }
        LOG.infof(
                "%,d lines, %,d characters streamed in %.1f s; at most %,d kB more in use",
                rows, characters, seconds(begin), most >> 10);
        assertEquals(LINES, rows);
        assertTrue(most < MOST_BYTES, most + " bytes more in use while streaming");
    }

    private static double seconds(long since) {
        return (System.nanoTime() - since) / 1e9;
    }

    /** Bytes in use after what is no longer needed is cleared away. */
    private static long live() {
        System.gc();
        Runtime runtime = Runtime.getRuntime();
        return runtime.totalMemory() - runtime.freeMemory();
    }
}
