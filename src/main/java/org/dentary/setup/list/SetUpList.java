package org.dentary.setup.list;

import static org.dentary.setup.list.Column.may;
import static org.dentary.setup.list.Column.must;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.dentary.platform.problem.NotFound;

/** The lists that a season is set up from, in the order in which they can be filled; the single place of their columns. */
public enum SetUpList {
    DISEASES(
            "diseases",
            "disease",
            "Diseases under surveillance; the first is what reports take when none is named",
            true,
            List.of("code"),
            must("code", Cell.CODE, "short code"),
            must("name", Cell.NAME, "name as people say it")),
    SPECIES(
            "species",
            "species",
            "Species that are sampled",
            true,
            List.of("code"),
            must("code", Cell.CODE, "short code"),
            must("name", Cell.NAME, "name as people say it"),
            may("key_reviewed", Cell.YES_OR_NO, "whether the jaw key was reviewed for it", "no")),
    REGIONS(
            "regions",
            "region",
            "Regions whose birth dates or rules differ",
            true,
            List.of("code"),
            must("code", Cell.CODE, "short code"),
            must("name", Cell.NAME, "name as people say it")),
    SEASONS(
            "seasons",
            "season",
            "Surveillance years, each following the other without a gap",
            false,
            List.of("code"),
            must("code", Cell.CODE, "short code"),
            must("name", Cell.NAME, "name as people say it"),
            must("starts_on", Cell.DAY, "first day"),
            must("ends_on", Cell.DAY, "last day")),
    UNITS(
            "management-units",
            "management_unit",
            "Management units",
            true,
            List.of("code"),
            must("code", Cell.CODE, "short code"),
            must("name", Cell.NAME, "name as people say it"),
            may("region", Cell.in(REGIONS), "region it belongs to")),
    BOUNDARIES(
            "management-unit-boundaries",
            "management_unit",
            "Boundaries of the management units; a GeoJSON FeatureCollection with the property code is taken too",
            true,
            List.of("code"),
            must("code", Cell.in(UNITS), "management unit"),
            must("boundary", Cell.BOUNDARY, "its outline"),
            must("boundary_version", Cell.NAME, "which edition of the outline")),
    STATIONS(
            "stations",
            "station",
            "Check stations and other places where animals are taken in",
            true,
            List.of("code"),
            must("code", Cell.CODE, "short code"),
            must("name", Cell.NAME, "name as people say it"),
            may("unit", Cell.in(UNITS), "management unit it stands in"),
            must("time_zone", Cell.ZONE, "time zone whose days it keeps")),
    LABORATORIES(
            "laboratories",
            "laboratory",
            "Laboratories; the first is proposed when a box is packed",
            true,
            List.of("code"),
            must("code", Cell.CODE, "short code"),
            must("name", Cell.NAME, "name"),
            may("address", Cell.LONG_TEXT, "where boxes go"),
            may("contact", Cell.LONG_TEXT, "whom to call there"),
            may(
                    "turnaround_days",
                    Cell.wholeNumber(1, 365),
                    "days from dispatch to report that it promises; where it counts from receipt, add those on the road")),
    METHODS(
            "test-methods",
            "test_method",
            "Test methods, each for one disease",
            true,
            List.of("code"),
            must("code", Cell.CODE, "short code, as result files name it"),
            must("name", Cell.NAME, "name as people say it"),
            must("disease", Cell.in(DISEASES), "disease it looks for"),
            must("accepted_tissues", Cell.severalOf(Vocabulary.TISSUES), "tissues on which its word counts")),
    ACCEPTANCE(
            "laboratory-acceptance",
            "laboratory_acceptance",
            "What each laboratory accepts, from a day on",
            false,
            List.of("laboratory", "method", "tissue", "preservation", "side", "in_force_from"),
            LaboratoryColumns.acceptance()),
    PROFILES(
            "laboratory-profiles",
            "laboratory_profile",
            "When and how each laboratory takes parcels, from a day on; it warns and refuses nothing",
            false,
            List.of("laboratory", "in_force_from"),
            LaboratoryColumns.profiles()),
    CLOSURES(
            "laboratory-closures",
            "laboratory_closure",
            "Days on which a laboratory takes nothing",
            false,
            List.of("laboratory", "day"),
            LaboratoryColumns.closures()),
    CODE_MAPS(
            "code-maps",
            "code_map_code",
            "What each laboratory's codes in HL7 messages mean, edition by edition, each for messages from a day on",
            false,
            List.of("laboratory", "edition", "field", "code", "system"),
            LaboratoryColumns.codeMaps()),
    PERSONS(
            "persons",
            "person",
            "Everyone who takes part",
            true,
            List.of("code"),
            must("code", Cell.CODE, "short code that means nothing, kept for ever"),
            must("name", Cell.NAME, "name"),
            may("organisation", Cell.NAME, "whom the person works for"),
            may("active", Cell.YES_OR_NO, "whether the person still takes part", "yes")),
    PARTIES(
            "parties",
            "party",
            "Organisations that hold or carry samples, other than laboratories",
            true,
            List.of("code"),
            must("code", Cell.CODE, "short code"),
            must("name", Cell.NAME, "name")),
    STORES(
            "stores",
            "store",
            "Locked places with a named keeper",
            true,
            List.of("code"),
            must("code", Cell.CODE, "short code"),
            must("name", Cell.NAME, "name as people say it"),
            may("station", Cell.in(STATIONS), "station it stands at"),
            must("keeper", Cell.in(PERSONS), "person who answers for it"),
            may("people", Cell.STORE_PEOPLE, "others who may put in and take out")),
    ACCOUNTS(
            "accounts",
            "account",
            "Who signs in",
            false,
            List.of("username"),
            must("username", Cell.SIGN_IN_NAME, "sign-in name"),
            may("person", Cell.in(PERSONS), "person behind it; empty for a shared device"),
            must("role", Cell.oneOf(Vocabulary.ROLES), "what it may do"),
            may("stations", Cell.allOrSeveralIn(STATIONS), "stations it serves"),
            may("password", Cell.PASSWORD, "password; a new account needs one, an empty cell keeps the present one"),
            may("active", Cell.YES_OR_NO, "whether it may sign in", "yes")),
    SETTINGS(
            "plan-settings",
            "plan_setting",
            "The plan's settings, where they differ from the default",
            false,
            List.of("name", "season", "region", "unit"),
            must("name", Cell.oneOf(Vocabulary.SETTINGS), "setting"),
            may("value", Cell.LONG_TEXT, "its value"),
            may("season", Cell.in(SEASONS), "season it holds for; empty for every season"),
            may("region", Cell.in(REGIONS), "region it holds for; empty for every region"),
            may("unit", Cell.in(UNITS), "management unit it holds for; empty for every unit")),
    RISK_WEIGHTS(
            "risk-weights",
            "risk_weight",
            "Published risk weights by class of animal, in sets; the setting RISK_WEIGHT_SET names the set in use",
            false,
            List.of("weight_set", "disease", "species", "age_class", "sex", "mortality_source", "clinical_signs"),
            ReferenceColumns.riskWeights()),
    CAUTIONS(
            "cautions",
            "caution",
            "Cautions with whom they defer to and who reviewed them",
            true,
            List.of("code", "version"),
            must("code", Cell.CODE, "short code"),
            must("version", Cell.EDITION, "edition; another text needs a higher one"),
            may("disease", Cell.in(DISEASES), "disease it is about; empty for every disease"),
            must("hazard", Cell.wordsOf(Vocabulary.HAZARDS), "where it is shown"),
            must("text", Cell.LONG_TEXT, "the caution"),
            must("authority", Cell.NAME, "whose written instructions stand above it"),
            may("reviewed_by", Cell.in(PERSONS), "person who reviewed it"),
            may("reviewed_on", Cell.DAY, "day of the review"),
            may("review_by", Cell.DAY, "day by which it is to be reviewed again")),
    HERD_STRUCTURES(
            "herd-structures",
            "herd_structure",
            "Deer by age class and sex in a named, dated herd that prevalence is standardized to",
            false,
            List.of("code", "age_class", "sex"),
            ReferenceColumns.herdStructures()),
    TEST_PERFORMANCE(
            "test-performance",
            "test_performance",
            "Published sensitivity and specificity of tests on tissues, in sets, each with its citation; true prevalence is"
                    + " computed with the set that the reader chooses, the chance of detection with the one that the setting"
                    + " TEST_PERFORMANCE_SET names. Give the counts of the study, or fractions, which"
                    + " are then taken as known",
            false,
            List.of("code"),
            ReferenceColumns.testPerformance()),
    AGEING_ERROR(
            "ageing-error-matrices",
            "ageing_error_matrix",
            "How often jaws of each true age class are read as each class, from a publication or as a stated what-if",
            false,
            List.of("code", "sex", "true_class", "read_class"),
            ReferenceColumns.ageingError());

    private static final Set<String> TO_BEGIN = Set.of(
            "DISEASES",
            "SPECIES",
            "SEASONS",
            "UNITS",
            "STATIONS",
            "LABORATORIES",
            "METHODS",
            "ACCEPTANCE",
            "PERSONS",
            "ACCOUNTS");

    private final String path;
    private final String table;
    private final String meaning;
    private final boolean ordered;
    private final List<String> key;
    private final List<Column> columns;

    SetUpList(String path, String table, String meaning, boolean ordered, List<String> key, Column... columns) {
        this.path = path;
        this.table = table;
        this.meaning = meaning;
        this.ordered = ordered;
        this.key = key;
        this.columns = List.of(columns);
    }

    /** The list of that name. */
    public static SetUpList of(String path) {
        return Arrays.stream(values())
                .filter(list -> list.path.equals(path))
                .findFirst()
                .orElseThrow(() -> new NotFound(
                        "LIST_UNKNOWN",
                        (path == null ? "list is missing; name one" : "'" + path + "' is no list") + "; there are "
                                + Arrays.stream(values()).map(SetUpList::path).collect(Collectors.joining(", "))));
    }

    /** Its name in addresses and file names. */
    public String path() {
        return path;
    }

    /** Its name as a heading. */
    public String words() {
        String text = path.replace('-', ' ');
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    /** What it holds. */
    public String meaning() {
        return meaning;
    }

    /** Whether nothing can be taken in or sent to a laboratory before it holds something. */
    public boolean begins() {
        return TO_BEGIN.contains(name());
    }

    /** The list to fill after this one, or null. */
    public SetUpList next() {
        return ordinal() + 1 == values().length ? null : values()[ordinal() + 1];
    }

    public String table() {
        return table;
    }

    /** Whether its rows have a set-up order. */
    public boolean ordered() {
        return ordered;
    }

    public List<String> key() {
        return key;
    }

    public List<Column> columns() {
        return columns;
    }

    public List<String> header() {
        return columns.stream().map(Column::name).toList();
    }

    /** What tells one row from another, as one text. */
    public String keyOf(Map<String, String> row) {
        return key.stream().map(column -> row.getOrDefault(column, "")).collect(Collectors.joining(" / "));
    }
}
