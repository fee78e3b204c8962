package org.dentary.story;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import java.io.OutputStream;
import java.util.List;
import org.dentary.platform.table.CsvTable;

/** Lists animals. */
@ApplicationScoped
public class AnimalListService {
    private static final int AT_A_TIME = 1000;
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

    AnimalListService(AnimalListQueries queries) {
        this.queries = queries;
    }

    /** At most {@code limit} animals after a kit, newest first; null begins at the newest. */
    public List<AnimalListItem> page(AnimalFilter filter, String after, int limit) {
        return queries.page(filter, after, limit);
    }

    /** Writes all animals of the filter as CSV, a thousand at a time, so that memory does not grow with the list. */
    @ActivateRequestContext
    public void write(AnimalFilter filter, OutputStream out) {
        try (CsvTable table = CsvTable.on(out, COLUMNS)) {
            String after = null;
            List<AnimalListItem> page;
            do {
                page = queries.page(filter, after, AT_A_TIME);
                page.forEach(animal -> row(table, animal));
                after = page.isEmpty() ? null : page.get(page.size() - 1).kit();
            } while (page.size() == AT_A_TIME);
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
