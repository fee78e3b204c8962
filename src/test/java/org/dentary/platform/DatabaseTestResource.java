package org.dentary.platform;

import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.dentary.platform.database.DatabaseStart;

/** The one test resource: the service's own embedded PostgreSQL in a fresh folder, as in production. */
public class DatabaseTestResource implements QuarkusTestResourceLifecycleManager {
    @Override
    public Map<String, String> start() {
        Path data = Path.of("target", "test-data").toAbsolutePath();
        delete(data);
        data.toFile().mkdirs();
        Map<String, String> settings = new HashMap<>(DatabaseStart.start(
                new Settings(data, 8080, "127.0.0.1", Optional.empty(), false, Optional.empty(), Optional.empty())));
        settings.put("dentary.data", data.toString());
        return settings;
    }

    @Override
    public void stop() {}

    private static void delete(Path folder) {
        // What a run before left behind may still be shutting down: keep its server's folder out of the way.
        if (Files.exists(folder)) {
            Path old = folder.resolveSibling("test-data-" + System.nanoTime());
            try {
                Files.move(folder, old);
                try (var files = Files.walk(old)) {
                    files.sorted(Comparator.reverseOrder())
                            .forEach(file -> file.toFile().delete());
                }
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
