package org.dentary.prevalence.linelist;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Conditions on columns that may be empty. */
class LineFilterTest {
    private static String sql(String... seasons) {
        return new LineFilter(Map.of(LineColumn.SEASON, List.of(seasons)), null, null).sql();
    }

    @Test
    void namedValuesAskTheBareColumnThatAnIndexServes() {
        assertEquals(" and l.season in (:filter_season)", sql("2026", "2027"));
    }

    @Test
    void theEmptyOnesAreFoundAsUnknownBesideOthers() {
        assertEquals(" and coalesce(l.season, 'UNKNOWN') in (:filter_season)", sql("2026", "UNKNOWN"));
    }
}
