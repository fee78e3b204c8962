package org.dentary.cautions;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;

/** Reads the newest version of each caution. */
@ApplicationScoped
class CautionQueries {
    private static final String IN_FORCE = """
            select code, version, disease, hazard, text, authority, reviewed_by, reviewed_on, review_by
              from (select c.*, row_number() over (partition by code order by length(version) desc, version desc) as age
                      from caution c) newest
             where age = 1 order by position, code
            """;

    private final EntityManager entities;

    CautionQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** A caution as stored; hazards separated by blanks. */
    record CautionRow(
            String code,
            String version,
            String disease,
            String hazard,
            String text,
            String authority,
            String reviewedBy,
            LocalDate reviewedOn,
            LocalDate reviewBy) {
        CautionView view(LocalDate today) {
            String words = code.replace('_', ' ').toLowerCase(Locale.ROOT);
            return new CautionView(
                    code,
                    Character.toUpperCase(words.charAt(0)) + words.substring(1),
                    version,
                    disease,
                    List.of(hazard.split(" ")),
                    text,
                    authority,
                    reviewedBy != null,
                    reviewedBy,
                    reviewedOn,
                    reviewBy,
                    reviewBy != null && reviewBy.isBefore(today));
        }
    }

    @SuppressWarnings("unchecked")
    List<CautionRow> inForce() {
        return entities.createNativeQuery(IN_FORCE, CautionRow.class).getResultList();
    }
}
