package org.dentary.codes.sheet;

import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.dentary.platform.StartupFault;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Reads the program's own label stocks when the service starts, or ends the start naming what is wrong with the file. */
@ApplicationScoped
class OwnLabelStocks {
    private final Optional<Path> file;

    OwnLabelStocks(@ConfigProperty(name = "dentary.label-stocks") Optional<Path> file) {
        this.file = file;
    }

    void read(@Observes StartupEvent start) {
        file.ifPresent(OwnLabelStocks::read);
    }

    /** @throws StartupFault where the file cannot be read or holds a stock that cannot be */
    static void read(Path file) {
        try (Reader csv = Files.newBufferedReader(file)) {
            LabelStocks.add(LabelStocks.read(csv));
        } catch (IOException | UncheckedIOException fault) {
            throw new StartupFault("DENTARY_LABEL_STOCKS is '" + file + "', which cannot be read (" + fault
                    + "); name a CSV file in UTF-8");
        } catch (RuntimeException fault) {
            throw new StartupFault("DENTARY_LABEL_STOCKS, " + file + ": " + fault.getMessage());
        }
    }
}
