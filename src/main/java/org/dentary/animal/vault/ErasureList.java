package org.dentary.animal.vault;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.dentary.platform.DataFolder;

/**
 * Kits whose contacts were erased and when, in a file beside the database: a restore of the database brings the contacts
 * back, this list takes them away again. It names no person.
 */
@ApplicationScoped
class ErasureList {
    private final Path file;

    ErasureList(DataFolder files) {
        this.file = files.folder("erasures").resolve("contacts.csv");
    }

    /** Adds a line and waits until it is on the disk. */
    void add(String kit, Instant at) {
        try {
            Files.writeString(
                    file,
                    kit + "," + at + "\n",
                    StandardOpenOption.CREATE,
                    StandardOpenOption.APPEND,
                    StandardOpenOption.SYNC);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The last erasure by kit; empty where nothing was ever erased. */
    Map<String, Instant> all() {
        Map<String, Instant> erased = new TreeMap<>();
        if (Files.exists(file)) {
            lines().stream()
                    .filter(line -> !line.isBlank())
                    .map(line -> line.split(","))
                    .forEach(cells -> erased.put(cells[0], Instant.parse(cells[1])));
        }
        return erased;
    }

    private List<String> lines() {
        try {
            return Files.readAllLines(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
