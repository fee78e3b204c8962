package org.dentary.result.feedback;

/** By what the rates are told apart. */
public enum Grouping {
    STATION("Station", "r.station"),
    PERSON("Taken by", "r.collected_by"),
    TISSUE("Tissue", "r.tissue"),
    PRESERVATION("Kept", "r.preservation"),
    DAYS_TO_FIXATION("Days from taking to formalin", """
            case when r.fixed_days is null then 'NOT_FIXED' when r.fixed_days < 1 then 'SAME_DAY'
                 when r.fixed_days <= 1 then '1' when r.fixed_days <= 3 then '2-3' when r.fixed_days <= 7 then '4-7'
                 else 'MORE_THAN_7' end
            """);

    private final String words;
    private final String expression;

    Grouping(String words, String expression) {
        this.words = words;
        this.expression = expression;
    }

    /** As the heading of its column. */
    public String words() {
        return words;
    }

    /** The SQL expression over a reported specimen. */
    String expression() {
        return expression;
    }
}
