package org.dentary.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Today is the stations' day: at eight in the evening in Chicago it is tomorrow in Greenwich. */
class TodayTest {
    private static final Path SOURCES = Path.of("src/main/java/org/dentary");
    private static final Pattern GREENWICH =
            Pattern.compile("LocalDate\\.(now|ofInstant)\\([^;]*ZoneOffset\\.UTC", Pattern.DOTALL);
    /** Cautions lie below the plan and know no station; the demo's calendar is its own; a picture's axis is drawn in one zone. */
    private static final Set<String> EXCEPT = Set.of("CautionService.java", "DemoSetUp.java", "WeeksPicture.java");

    @Test
    void nobodyAsksGreenwichForTheDay() throws IOException {
        try (Stream<Path> files = Files.walk(SOURCES)) {
            List<String> asking = files.filter(file -> file.toString().endsWith(".java"))
                    .filter(file -> !EXCEPT.contains(file.getFileName().toString()))
                    .filter(file -> GREENWICH.matcher(read(file)).find())
                    .map(Path::toString)
                    .sorted()
                    .toList();
            assertEquals(List.of(), asking);
        }
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
