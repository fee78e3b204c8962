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
 * Which photographs were erased, when and by whom, in a file beside the database: a restore of the database brings the
 * pictures back, this list takes them away again.
 */
@ApplicationScoped
class ErasedEvidence {
    private final Path file;

    ErasedEvidence(DataFolder files) {
        this.file = files.folder("erasures").resolve("custody-evidence.csv");
    }

    /** A line of the list. */
    record Line(UUID photo, Instant at, String by) {}

    /** Adds a line and waits until it is on the disk. */
    void add(UUID photo, Instant at, String by) {
        try {
            Files.writeString(
                    file,
                    photo + "," + at + "," + by + "\n",
                    StandardOpenOption.CREATE,
                    StandardOpenOption.APPEND,
                    StandardOpenOption.SYNC);
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    /** Every erasure, the oldest first; empty where nothing was ever erased. */
    List<Line> all() {
        try {
            return Files.exists(file)
                    ? Files.readAllLines(file).stream()
                            .filter(line -> !line.isBlank())
                            .map(line -> line.split(",", 3))
                            .map(cells -> new Line(UUID.fromString(cells[0]), Instant.parse(cells[1]), cells[2]))
                            .toList()
                    : List.of();
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }
}
