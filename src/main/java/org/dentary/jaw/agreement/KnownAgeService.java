package org.dentary.jaw.agreement;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.dentary.jaw.agreement.KnownAgeQueries.Row;
import org.dentary.jaw.key.AgeClass;

/** Counts how jaws of known age were read: how right readers are, not how far they agree. */
@ApplicationScoped
public class KnownAgeService {
    private final KnownAgeQueries queries;

    KnownAgeService(KnownAgeQueries queries) {
        this.queries = queries;
    }

    /**
     * Every season's readings by teeth of jaws whose age is known from one mark, and first answers of finished practice to
     * jaws of known age on the panel. A reading counts if it was blind or came in before the mark was told, and its reader
     * told no mark of that animal.
     *
     * @param species species code
     * @param until readings, marks and answers received later are left out, so that the count of a day can be made again
     */
    public KnownAgeReadings readings(String species, Instant until) {
        List<KnownAgeReadings.Count> counts = new ArrayList<>();
        List<KnownAgeReadings.Jaws> jaws = new ArrayList<>();
        for (Row row : queries.readings(species, until)) {
            AgeClass known = AgeClass.valueOf(row.knownClass());
            if (row.readClass() == null) {
                jaws.add(new KnownAgeReadings.Jaws(known, row.jaws()));
            } else {
                counts.add(new KnownAgeReadings.Count(known, AgeClass.valueOf(row.readClass()), row.readings()));
            }
        }
        return new KnownAgeReadings(species, counts, jaws);
    }
}
