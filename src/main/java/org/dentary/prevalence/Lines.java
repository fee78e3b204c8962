package org.dentary.prevalence;

import java.util.UUID;

/**
 * Where a report's lines come from: the open lines of a season, or those that a cut holds.
 *
 * @param season season code
 * @param disease disease code
 * @param species species code
 * @param cut id of a data cut of that season, or null for the lines as they are now
 */
public record Lines(String season, String disease, String species, UUID cut) {
    /** {@code from ... where ...} over lines {@code l}. */
    public String from() {
        return (cut == null
                        ? " from line l where l.closed_at is null and l.season = :season"
                        : " from data_cut_line c join line l on l.id = c.line where c.cut = :cut")
                + " and l.disease = :disease and l.species = :species";
    }

    /** Sets the parameters that {@link #from} names. */
    public void bind(jakarta.persistence.Query query) {
        if (cut == null) {
            query.setParameter("season", season);
        } else {
            query.setParameter("cut", cut);
        }
        query.setParameter("disease", disease).setParameter("species", species);
    }
}
