package org.dentary.prevalence.cut;

import java.util.ArrayList;
import java.util.List;

/**
 * One line that differs between two cuts.
 *
 * @param kind {@code LATE_INTAKE}, {@code LEFT}, {@code PENDING_RESOLVED}, {@code CORRECTION} (an outcome that was
 *     already told changed) or {@code FACTS} (age, sex, place or whether it counts)
 * @param cause what revised the line
 * @param details each field that differs, with the word before and after
 */
public record DataCutChange(String kit, String disease, String kind, String cause, List<Detail> details) {
    /** A field before and after; null where the line was not there. */
    public record Detail(String field, String before, String after) {}

    private static final String[] FIELDS = {"outcome", "ageClass", "sex", "exclusion", "managementUnit"};

    static DataCutChange of(Object[] row) {
        boolean fresh = (Boolean) row[2];
        boolean gone = (Boolean) row[3];
        List<Detail> details = new ArrayList<>();
        for (int i = 0; i < FIELDS.length; i++) {
            String before = fresh ? null : String.valueOf(row[5 + 2 * i]);
            String after = gone ? null : String.valueOf(row[6 + 2 * i]);
            if (!java.util.Objects.equals(before, after)) {
                details.add(new Detail(FIELDS[i], before, after));
            }
        }
        return new DataCutChange(
                row[0].toString(), row[1].toString(), kind(fresh, gone, row), row[4].toString(), details);
    }

    private static String kind(boolean fresh, boolean gone, Object[] row) {
        if (fresh) {
            return "LATE_INTAKE";
        }
        if (gone) {
            return "LEFT";
        }
        if (!row[5].equals(row[6])) {
            return row[5].equals("PENDING") ? "PENDING_RESOLVED" : "CORRECTION";
        }
        return "FACTS";
    }
}
