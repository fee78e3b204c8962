package org.dentary.prevalence.cut;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.dentary.prevalence.Words;
import org.dentary.prevalence.linelist.FilterWords;

/**
 * One line that differs between two cuts in what may be told.
 *
 * @param cause what revised the line to what it tells in the second cut
 * @param details each field that differs, with the word before and after
 */
public record DataCutChange(String kit, String disease, ChangeKind kind, String cause, List<Detail> details) {
    /** A field before and after; null where the line was not there, empty where it told nothing. */
    public record Detail(String field, String before, String after) {
        /** The field as a table says it. */
        @JsonIgnore
        public String getFieldWords() {
            return FilterWords.name(field);
        }
    }

    /** How many fields tell of a line that came or left. */
    private static final int FIRST = 6;

    /**
     * @param before what the first cut tells, in the order of {@link CutChangeQueries#FIELDS}; null: not in it
     * @param after the same of the second
     * @param late whether the animal was first taken in with this season
     */
    static DataCutChange of(
            String kit, String disease, String cause, List<String> before, List<String> after, boolean late) {
        List<String> fields = CutChangeQueries.FIELDS;
        List<Detail> details = new ArrayList<>();
        int told = before == null || after == null ? FIRST : fields.size();
        for (int i = 0; i < told; i++) {
            String was = before == null ? null : before.get(i);
            String is = after == null ? null : after.get(i);
            boolean nothing = (was == null || was.isEmpty()) && (is == null || is.isEmpty());
            if (!nothing && !Objects.equals(was, is)) {
                details.add(new Detail(fields.get(i), was, is));
            }
        }
        return new DataCutChange(kit, disease, kind(before, after, late), cause, details);
    }

    private static ChangeKind kind(List<String> before, List<String> after, boolean late) {
        if (before == null) {
            return late ? ChangeKind.LATE_INTAKE : ChangeKind.MOVED_IN;
        }
        return after == null ? ChangeKind.LEFT : ChangeKind.of(before.get(0), after.get(0));
    }

    /** The cause as a table says it. */
    @JsonIgnore
    public String getCauseWords() {
        return switch (cause) {
            case "FINDING" -> "Laboratory finding";
            case "RE_ATTRIBUTION_ASKED" -> "Exchanged labels suspected";
            case "RE_ATTRIBUTION" -> "Exchanged labels put right";
            case "RE_ATTRIBUTION_REFUSED" -> "Exchanged labels: suspicion refused";
            case "SAME_AS" -> "Two kits of one animal";
            case "SAME_AS_UNDONE" -> "Two kits of one animal, undone";
            case "ORDER" -> "Sent to a laboratory";
            default -> Words.of(cause);
        };
    }
}
