package org.dentary.story;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import java.io.OutputStream;
import java.util.List;
import org.dentary.platform.database.Snapshot;
import org.dentary.platform.table.CsvTable;

/** Lists animals. */
@ApplicationScoped
public class AnimalListService {
    private static final List<String> COLUMNS = List.of(
            "kit",
            "season",
            "station",
            "managementUnit",
            "species",
            "sex",
            "ageClass",
            "ageDisputed",
            "diedOn",
            "mortalitySource",
            "jawStatus",
            "specimens",
            "outcome",
            "exclusion",
            "recordedAt");

    private final AnimalListQueries queries;
    private final Snapshot snapshot;

    AnimalListService(AnimalListQueries queries, Snapshot snapshot) {
        this.queries = queries;
        this.snapshot = snapshot;
    }

    /** At most {@code limit} animals after a kit, newest first; null begins at the newest. */
    public List<AnimalListItem> page(AnimalFilter filter, String after, int limit) {
        return queries.page(filter, after, limit);
    }

    /** Writes all animals of the filter as CSV, streamed, so that memory does not grow with the list. */
    @ActivateRequestContext
    public void write(AnimalFilter filter, OutputStream out) {
        try (CsvTable table = CsvTable.on(out, COLUMNS)) {
            snapshot.<AnimalListItem>stream(() -> queries.animals(filter), animal -> row(table, animal));
        }
    }

    private static void row(CsvTable table, AnimalListItem animal) {
        table.row(
                animal.kit(),
                animal.season(),
                animal.station(),
                animal.managementUnit(),
                animal.species(),
                animal.sex(),
                animal.ageClass(),
                animal.ageDisputed(),
                animal.diedOn(),
                animal.mortalitySource(),
                animal.jawStatus(),
                animal.specimens(),
                animal.outcome(),
                animal.exclusion(),
                animal.recordedAt());
    }
}
