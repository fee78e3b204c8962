package org.dentary.custody.evidence;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.DataFolder;

/**
 * Which photographs and texts were erased, when and by whom, in files beside the database: a restore of the database
 * brings them back, these lists take them away again.
 */
@ApplicationScoped
class ErasedEvidence {
    private final Path file;
    private final Path texts;

    ErasedEvidence(DataFolder files) {
        this.file = files.folder("erasures").resolve("custody-evidence.csv");
        this.texts = files.folder("erasures").resolve("custody-texts.csv");
    }

    /** A line of the list. */
    record Line(UUID photo, Instant at, String by) {}

    /** A text that was erased. */
    record Text(UUID event, String field, Instant at, String by) {}

    /** Adds a line and waits until it is on the disk. */
    void add(UUID photo, Instant at, String by) {
        append(file, photo + "," + at + "," + by + "\n");
    }

    /** The same for a text of an event. */
    void addText(UUID event, String field, Instant at, String by) {
        append(texts, event + "," + field + "," + at + "," + by + "\n");
    }

    private static void append(Path file, String line) {
        try {
            Files.writeString(
                    file, line, StandardOpenOption.CREATE, StandardOpenOption.APPEND, StandardOpenOption.SYNC);
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    /** Every erasure, the oldest first; empty where nothing was ever erased. */
    List<Line> all() {
        return lines(file).stream()
                .map(line -> line.split(",", 3))
                .map(cells -> new Line(UUID.fromString(cells[0]), Instant.parse(cells[1]), cells[2]))
                .toList();
    }

    /** Every erasure of a text, the oldest first. */
    List<Text> texts() {
        return lines(texts).stream()
                .map(line -> line.split(",", 4))
                .map(cells -> new Text(UUID.fromString(cells[0]), cells[1], Instant.parse(cells[2]), cells[3]))
                .toList();
    }

    private static List<String> lines(Path file) {
        try {
            return Files.exists(file)
                    ? Files.readAllLines(file).stream()
                            .filter(line -> !line.isBlank())
                            .toList()
                    : List.of();
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }
}
