package org.dentary.setup.list;

import static org.dentary.setup.list.Column.may;
import static org.dentary.setup.list.Column.must;

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

    static Column[] testPerformance() {
        return new Column[] {
            must("code", Cell.CODE, "short code of the set; changed figures are a new set"),
            must("name", Cell.NAME, "name as people say it"),
            must("disease", Cell.in(SetUpList.DISEASES), "disease"),
            must("species", Cell.severalIn(SetUpList.SPECIES), "species that the figures are of"),
            must("methods", Cell.severalIn(SetUpList.METHODS), "test methods that it speaks of"),
            must("tissues", Cell.severalOf(Vocabulary.TISSUES), "tissues that it speaks of"),
            must(
                    "kind",
                    Cell.oneOf(Vocabulary.PERFORMANCE_KINDS),
                    "ANIMAL_LEVEL: found among infected animals; RELATIVE: among animals that another test detected, which"
                            + " corrects nothing and is refused where a true prevalence is asked for"),
            must("reference", Cell.NAME, "what the test was held against"),
            may("sensitivity", Cell.decimal(0, 1), "share of the infected that it detects, as published"),
            may("specificity", Cell.decimal(0, 1), "share of the others in which it detects nothing, as published"),
            may("infected", Cell.wholeNumber(1, 999_999), "infected animals of the study"),
            may("detected_of_infected", Cell.wholeNumber(0, 999_999), "of these, how many it detected"),
            may("uninfected", Cell.wholeNumber(1, 999_999), "animals of the study that were not infected"),
            may(
                    "not_detected_of_uninfected",
                    Cell.wholeNumber(0, 999_999),
                    "of these, in how many it detected nothing"),
            must("population", Cell.LONG_TEXT, "which animals the figures are of"),
            must("source", Cell.LONG_TEXT, "publication and where in it the figures stand"),
            must(
                    "source_seen",
                    Cell.oneOf(Vocabulary.SOURCES_SEEN),
                    "whether the figures were read there, are from memory, or were invented for a demo"),
            must("as_of", Cell.DAY, "day on which they were taken from it")
        };
    }

    static Column[] ageingError() {
        return new Column[] {
            must("code", Cell.CODE, "short code of the matrix, the same in each of its rows; not KNOWN_AGE"),
            must("name", Cell.NAME, "what it is, as people say it"),
            must("species", Cell.in(SetUpList.SPECIES), "species of the jaws"),
            must("kind", Cell.oneOf(List.of("CITED", "STATED")), "CITED from a publication, or STATED as a what-if"),
            must("source", Cell.LONG_TEXT, "publication and table; of a stated one, who states it and why"),
            must("as_of", Cell.DAY, "day of the publication or of the statement"),
            must("sex", Cell.oneOf(List.of("BOTH", "MALE", "FEMALE")), "sex it is for; BOTH where one serves both"),
            must("true_class", Cell.oneOf(Vocabulary.AGE_CLASSES), "age class that the deer is known to be of"),
            must("read_class", Cell.oneOf(Vocabulary.AGE_CLASSES), "age class that its jaw is read as"),
            may("jaws", Cell.wholeNumber(0, 999_999), "jaws read so; in every row of a code, or else share"),
            may("share", Cell.decimal(0, 1), "share of the true class read so; the three of a true class sum to 1")
        };
    }
}
