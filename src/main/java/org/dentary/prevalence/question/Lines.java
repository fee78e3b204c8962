package org.dentary.prevalence.question;

import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * Where a report's lines come from: the open lines of a season, or those that a cut holds.
 *
 * @param season season code
 * @param disease disease code
 * @param species species code
 * @param cut id of a data cut of that season, or null for the lines as they are now
 * @param beside other seasons read together with it: live ones where it is live, cuts where it is a cut; mostly empty
 */
public record Lines(String season, String disease, String species, UUID cut, List<Beside> beside) {
    /** {@code from ... where ...} over lines {@code l}. */
    public String from() {
        return (cut == null
                        ? " from line l where l.closed_at is null and l.season in (:seasons)"
                        : " from data_cut_line c join line l on l.id = c.line where c.cut in (:cuts)")
                + " and l.disease = :disease and l.species = :species";
    }

    /** Sets the parameters that {@link #from} names. */
    public void bind(jakarta.persistence.Query query) {
        if (cut == null) {
            query.setParameter(
                    "seasons",
                    Stream.concat(Stream.of(season), beside.stream().map(Beside::season))
                            .toList());
        } else {
            query.setParameter(
                    "cuts",
                    Stream.concat(Stream.of(cut), beside.stream().map(Beside::cut))
                            .toList());
        }
        query.setParameter("disease", disease).setParameter("species", species);
    }
}
