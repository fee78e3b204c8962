package org.dentary.setup;

import static org.dentary.setup.Column.may;
import static org.dentary.setup.Column.must;

import java.util.List;

/**
 * Columns of the lists that reports take figures from: published or estimated elsewhere, each row with its source. Methods, as
 * they name lists above them in {@link SetUpList}, which are there only when that is made.
 */
final class ReferenceColumns {
    private ReferenceColumns() {}

    static Column[] riskWeights() {
        return new Column[] {
            must("weight_set", Cell.CODE, "set it belongs to; changed weights are a new set"),
            must("disease", Cell.in(SetUpList.DISEASES), "disease"),
            must("species", Cell.in(SetUpList.SPECIES), "species"),
            must("age_class", Cell.oneOf(Vocabulary.AGE_CLASSES), "age class"),
            must("sex", Cell.oneOf(Vocabulary.SEXES), "sex"),
            must("mortality_source", Cell.oneOf(Vocabulary.SOURCES), "how the animal died"),
            must("clinical_signs", Cell.oneOf(List.of("NONE_SEEN", "SEEN")), "whether signs were seen"),
            must("relative_risk", Cell.decimal(0, 1000), "risk against the reference class, which has 1"),
            may("population_share", Cell.decimal(0, 1), "share of the herd in this class; for all of a set or none"),
            must("citation", Cell.LONG_TEXT, "publication and table that the weight is from")
        };
    }

    static Column[] herdStructures() {
        return new Column[] {
            must("code", Cell.CODE, "short code of the structure, the same in each of its rows"),
            must("name", Cell.NAME, "which herd, as people say it"),
            must("as_of", Cell.DAY, "day that it describes"),
            must("source", Cell.NAME, "who estimated it and where that is written"),
            must("species", Cell.in(SetUpList.SPECIES), "species"),
            must("age_class", Cell.oneOf(Vocabulary.AGE_CLASSES), "age class"),
            must("sex", Cell.oneOf(Vocabulary.SEXES), "sex"),
            must("animals", Cell.wholeNumber(0, 999_999), "deer in the class; only the shares are used")
        };
    }
}
