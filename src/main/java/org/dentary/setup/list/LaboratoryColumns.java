package org.dentary.setup.list;

import static org.dentary.setup.list.Column.may;
import static org.dentary.setup.list.Column.must;

import java.util.List;
import org.dentary.result.mapping.CodeMapRules;

/**
 * Columns of the lists that say what each laboratory takes, when, and how its codes read. Methods, as they name lists
 * above them in {@link SetUpList}, which are there only when that is made.
 */
final class LaboratoryColumns {
    private static final Cell THEIRS = Cell.text("text of up to 80 characters without ^", "[^\\^\\r\\n]{1,80}");

    private LaboratoryColumns() {}

    static Column[] acceptance() {
        return new Column[] {
            must("laboratory", Cell.in(SetUpList.LABORATORIES), "laboratory"),
            must("method", Cell.in(SetUpList.METHODS), "test method"),
            must("tissue", Cell.oneOf(Vocabulary.TISSUES), "tissue"),
            must("preservation", Cell.oneOf(Vocabulary.PRESERVATIONS), "how it must be kept"),
            may("side", Cell.oneOf(Vocabulary.SIDES), "side; empty for any"),
            may("max_days", Cell.wholeNumber(0, 3650), "most days from collection to arrival; empty for no limit"),
            may("max_days_kept", Cell.wholeNumber(0, 3650), "most days in this preservation; empty for no limit"),
            may("minimum_age", Cell.oneOf(List.of("FAWN", "YEARLING", "ADULT")), "youngest age class; empty for any"),
            may("unknown_age_stops", Cell.YES_OR_NO, "whether an unknown age is not taken", "no"),
            may("container", Cell.NAME, "what it must be in"),
            must("in_force_from", Cell.DAY, "first day on which this holds"),
            may("in_force_to", Cell.DAY, "last day on which this holds; empty for open")
        };
    }

    static Column[] profiles() {
        return new Column[] {
            must("laboratory", Cell.in(SetUpList.LABORATORIES), "laboratory"),
            must("in_force_from", Cell.DAY, "first day on which this holds"),
            may("in_force_to", Cell.DAY, "last day on which this holds; empty for open"),
            must(
                    "receives_on",
                    Cell.severalOf(List.of("MON", "TUE", "WED", "THU", "FRI", "SAT", "SUN")),
                    "weekdays on which it takes parcels"),
            may("cut_off", Cell.text("an hour as HH:MM", "([01]\\d|2[0-3]):[0-5]\\d"), "latest arrival, its own clock"),
            may("temperature", Cell.NAME, "how cold parcels must arrive, in its words"),
            may("pieces", Cell.NAME, "how many pieces and how packed, in its words"),
            may("paperwork", Cell.LONG_TEXT, "what must come with the parcel"),
            may("handling", Cell.LONG_TEXT, "its handling words for who packs")
        };
    }

    static Column[] closures() {
        return new Column[] {
            must("laboratory", Cell.in(SetUpList.LABORATORIES), "laboratory"),
            must("day", Cell.DAY, "day"),
            must("name", Cell.NAME, "why, such as a holiday's name")
        };
    }

    static Column[] codeMaps() {
        return new Column[] {
            must("laboratory", Cell.in(SetUpList.LABORATORIES), "laboratory"),
            must(
                    "edition",
                    Cell.EDITION,
                    "edition of its map; one that is there no longer changes, the next follows it"),
            must("in_force_from", Cell.DAY, "first day of the messages (MSH-7) that it is for; the same in an edition"),
            must("field", Cell.oneOf(CodeMapRules.FIELDS), "field of the message"),
            must("code", THEIRS, "the laboratory's code there"),
            may("system", THEIRS, "coding system (for OBX-23 who assigned it); empty for every one"),
            must("ours", Cell.CODE, "our word: stage, finding, reason, tissue, or the code of a method or laboratory")
        };
    }
}
