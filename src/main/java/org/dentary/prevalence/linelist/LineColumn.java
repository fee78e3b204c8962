package org.dentary.prevalence.linelist;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.Words;

/** The columns of the line list as it leaves, in their order, and the expression over a line {@code l} behind each. */
public enum LineColumn {
    KIT("kit", "l.kit"),
    SEASON("season", "l.season", true),
    DISEASE("disease", "l.disease"),
    SPECIES("species", "l.species"),
    ORIGIN("origin", "l.origin"),
    SEX("sex", "l.sex"),
    SEX_EVIDENCE("sexEvidence", "l.sex_evidence"),
    AGE_CLASS("ageClass", "l.age_class"),
    AGE_DISPUTED("ageDisputed", "l.age_disputed::text"),
    MANAGEMENT_UNIT("managementUnit", "l.unit", true),
    REGION("region", "l.region", true),
    STATION("station", "l.station"),
    DIED_ON("diedOn", "l.died_on::text", true),
    MORTALITY_SOURCE("mortalitySource", "l.mortality_source"),
    COLLECTION_ROUTE("collectionRoute", "l.collection_route"),
    CLINICAL_SIGNS("clinicalSigns", "l.clinical_signs"),
    SAMPLING_BASIS("samplingBasis", "l.sampling_basis"),
    HAS_SPECIMEN("hasSpecimen", "l.has_specimen::text"),
    OUTCOME("outcome", "l.outcome"),
    EXCLUSION("exclusion", "l.exclusion"),
    /** Whether a specimen of the animal was accepted by a signed exception; of withheld findings it tells nothing. */
    IDENTITY_EXCEPTION(
            "identityException", "('IDENTITY_EXCEPTION' = any(string_to_array(trim(l.footnotes), ' ')))::text");

    private final String field;
    private final String column;
    private final boolean canBeEmpty;

    LineColumn(String field, String column) {
        this(field, column, false);
    }

    LineColumn(String field, String column, boolean canBeEmpty) {
        this.field = field;
        this.column = column;
        this.canBeEmpty = canBeEmpty;
    }

    /** The column's name as people read it: {@code mortalitySource} is "Mortality source". */
    String words() {
        return Words.of(name());
    }

    /** The name in requests and answers, camelCase. */
    public String field() {
        return field;
    }

    /** Its value, UNKNOWN where it is empty. */
    String expression() {
        return canBeEmpty ? "coalesce(" + column + ", 'UNKNOWN')" : column;
    }

    /** Its value where nobody asks for the empty ones: what an index can serve. */
    String known() {
        return column;
    }

    public static List<String> fields() {
        return Arrays.stream(values()).map(LineColumn::field).toList();
    }

    /** The select list, each column under its field's name. */
    static String selectList() {
        return Arrays.stream(values())
                .map(c -> c.expression() + " as " + c.name().toLowerCase(java.util.Locale.ROOT))
                .collect(Collectors.joining(", "));
    }

    /** The column of that field; {@code unit} is understood as {@code managementUnit}. */
    static LineColumn named(String field) {
        String meant = field.equals("unit") ? "managementUnit" : field;
        return Arrays.stream(values())
                .filter(c -> c.field.equals(meant))
                .findFirst()
                .orElseThrow(() -> InvalidInput.field(
                        field,
                        "NOT_A_COLUMN",
                        "'" + field + "' is not a column to filter by; allowed: " + String.join(", ", fields())
                                + ", and " + LineFilter.FROM + " and " + LineFilter.TO + " for a span of days"));
    }
}
