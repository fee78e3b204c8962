package org.dentary.prevalence.pictures;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import org.dentary.platform.table.CsvTable;
import org.dentary.prevalence.Words;
import org.dentary.prevalence.chart.ChartInks;
import org.dentary.prevalence.chart.ChartPng;
import org.dentary.prevalence.chart.ChartSvg;
import org.dentary.prevalence.chart.PrevalenceChart.Use;

/**
 * One picture with what it is made from.
 *
 * @param name its name in addresses
 * @param title what it shows
 * @param how how to read it, in sentences
 * @param words its figures in words, for those who do not see it
 * @param columns of its table
 * @param rows cells in the order of the columns; null where there is no figure; a day or a {@link Named} is spelled out on pages
 * @param drawing draws it in given inks for a wide or a narrow screen
 */
public record Picture(
        String name,
        String title,
        String how,
        String words,
        List<Column> columns,
        List<List<Object>> rows,
        Drawing drawing) {

    /**
     * A column of the table.
     *
     * @param field its name in the CSV file
     * @param head its name on the page
     * @param number whether it holds numbers
     * @param share whether they are shares, shown as percentages
     */
    public record Column(String field, String head, boolean number, boolean share) {
        static Column text(String field, String head) {
            return new Column(field, head, false, false);
        }

        static Column number(String field, String head) {
            return new Column(field, head, true, false);
        }

        static Column share(String field, String head) {
            return new Column(field, head, true, true);
        }
    }

    /** A drawing for one width. */
    public interface Drawing {
        Plate on(ChartInks inks, boolean narrow);
    }

    /** What was drawn and how large it is. */
    public record Plate(int width, int height, java.util.function.Consumer<java.awt.Graphics2D> draw) {}

    /** What a file holds as a code and people read as a name. */
    record Named(String code, String name) {
        @Override
        public String toString() {
            return code;
        }
    }

    /** One cell as the page shows it. */
    public record Shown(String text, boolean number) {}

    String svg(Use use) {
        Plate plate = drawing.on(ChartInks.PLACEHOLDERS, use == Use.NARROW_PAGE);
        return ChartSvg.of(plate.width(), plate.height(), plate.draw(), title, words, use);
    }

    /** The drawing for paper: black on white, as wide as a page. */
    public Plate onPaper() {
        return drawing.on(ChartInks.PAPER, false);
    }

    byte[] png() {
        Plate plate = onPaper();
        return ChartPng.of(plate.width(), plate.height(), plate.draw(), title, words);
    }

    String csv() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (CsvTable csv = CsvTable.on(out, columns.stream().map(Column::field).toList())) {
            rows.forEach(row -> csv.row(row.toArray()));
        }
        return out.toString(StandardCharsets.UTF_8);
    }

    /** The table as the page shows it. */
    public List<List<Shown>> shown() {
        return rows.stream()
                .map(row -> {
                    java.util.ArrayList<Shown> cells = new java.util.ArrayList<>();
                    for (int i = 0; i < row.size(); i++) {
                        Object value = row.get(i);
                        cells.add(new Shown(
                                text(value, columns.get(i), counted(row)),
                                columns.get(i).number()));
                    }
                    return List.<Shown>copyOf(cells);
                })
                .toList();
    }

    /** How many a row's shares are of, where it says so: they get no more digits than that carries, as in the report. */
    private Integer counted(List<Object> row) {
        for (int i = 0; i < row.size(); i++) {
            if (columns.get(i).field().equals("counted")) {
                return (Integer) row.get(i);
            }
        }
        return null;
    }

    private static String text(Object value, Column column, Integer counted) {
        if (value == null) {
            return column.field().equals("prevalence") && Integer.valueOf(0).equals(counted) ? "not sampled" : "";
        }
        if (column.share() && counted != null) {
            return Words.percent(((Number) value).doubleValue(), counted);
        }
        if (column.share()) {
            return org.dentary.prevalence.detection.ChanceWords.chance(((Number) value).doubleValue());
        }
        if (value instanceof Named named) {
            return named.name();
        }
        if (value instanceof LocalDate day) {
            return Words.day(day);
        }
        return value instanceof Integer whole ? String.format(java.util.Locale.US, "%,d", whole) : value.toString();
    }
}
