package org.dentary.jaw.agreement;

import io.quarkus.qute.TemplateData;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.dentary.jaw.agreement.ReaderAgreement.Group;
import org.dentary.statistics.agreement.Agreement;
import org.dentary.statistics.agreement.Kappa;

/**
 * A reader's agreement as its page says it, numbers as text.
 *
 * @param season season chosen; empty for all
 * @param seasons season codes to choose from, oldest first
 */
public record ReaderView(
        String person,
        String name,
        String season,
        List<String> seasons,
        List<GroupView> groups,
        List<Line> bySeason,
        List<String> notes) {
    private static final int FEW = 30;

    /**
     * One group with its table of counts.
     *
     * @param few whether there are so few jaws that only the counts are worth reading
     */
    public record GroupView(
            String id, String title, String meaning, String other, Line figures, boolean few, List<Row> rows) {}

    /** A row of the table of counts: this reader's class, and what the others said. */
    public record Row(String said, List<Integer> others, int all) {}

    /** Figures of one group in one season, or in all that were chosen. */
    @TemplateData
    public record Line(
            String season,
            String title,
            int animals,
            String exact,
            String withinOne,
            String bias,
            String kappa,
            String linear,
            String quadratic) {
        static Line of(String season, Group group, Agreement of) {
            return new Line(
                    season,
                    titleOf(group),
                    of.animals(),
                    percent(of.exact()),
                    percent(of.withinOne()),
                    of.bias() == null ? "-" : String.format(Locale.ROOT, "%+.2f", of.bias()),
                    words(of.kappa()),
                    words(of.linear()),
                    words(of.quadratic()));
        }
    }

    static ReaderView of(ReaderAgreement agreement, List<String> seasons) {
        List<GroupView> groups = new ArrayList<>();
        for (Group group : Group.values()) {
            ReaderAgreement.Compared compared = agreement.of(group);
            groups.add(new GroupView(
                    group.name().toLowerCase(Locale.ROOT),
                    titleOf(group),
                    meaning(group),
                    other(group),
                    Line.of("", group, compared.agreement()),
                    compared.agreement().animals() < FEW,
                    rows(agreement.classes(), compared.counts())));
        }
        return new ReaderView(
                agreement.person(),
                agreement.name(),
                agreement.season() == null ? "" : agreement.season(),
                seasons,
                groups,
                agreement.seasons().stream()
                        .map(line -> Line.of(line.season(), line.compared(), line.agreement()))
                        .toList(),
                agreement.notes());
    }

    private static List<Row> rows(List<String> classes, List<List<Integer>> counts) {
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < classes.size(); i++) {
            List<Integer> row = counts.get(i);
            rows.add(new Row(
                    classes.get(i),
                    row,
                    row.stream().mapToInt(Integer::intValue).sum()));
        }
        return rows;
    }

    /** A share as percent to one decimal; a dash where there is none. */
    static String percent(Double share) {
        return share == null ? "-" : String.format(Locale.ROOT, "%.1f %%", 100 * share);
    }

    /** A kappa with its standard error, or that it is undefined. */
    static String words(Kappa kappa) {
        return kappa.estimate() == null
                ? "undefined"
                : String.format(Locale.ROOT, "%.2f (error %.2f)", kappa.estimate(), kappa.standardError());
    }

    private static String titleOf(Group group) {
        return switch (group) {
            case DRAWN -> "Jaws drawn by lot";
            case PANEL -> "Reference panel";
            case KNOWN_AGE -> "Known ages";
            case REFERRED -> "Jaws chosen for a second reading";
        };
    }

    private static String meaning(Group group) {
        return switch (group) {
            case DRAWN -> "Other persons, blind, on jaws that nobody chose: how this reader reads from day to day.";
            case PANEL -> "Practice on jaws of known, agreed or drawn age; the first answer to each.";
            case KNOWN_AGE -> "Ages known from marks: right or wrong, not agreement.";
            case REFERRED ->
                "Other persons, blind, on jaws that a rule or a person sent on: harder by choice. Not a measure of"
                        + " the reader.";
        };
    }

    private static String other(Group group) {
        return switch (group) {
            case DRAWN, REFERRED -> "The other reader";
            case PANEL -> "The panel";
            case KNOWN_AGE -> "The mark";
        };
    }
}
