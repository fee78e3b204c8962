package org.dentary.calculators;

import io.quarkus.qute.TemplateData;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What a calculator answers, in words, numbers and a drawing.
 *
 * @param headline the result in one sentence
 * @param notes warnings to print beside it
 * @param drawing what to draw; its numbers are in the first table
 * @param tables the first holds the drawing's numbers
 * @param assumptions what the result rests on, in plain words
 * @param source what to cite
 */
@TemplateData
public record Answer(
        String headline,
        List<String> notes,
        Drawing drawing,
        List<Figures> tables,
        List<String> assumptions,
        String source) {

    /** A table: the first cell of a row names it; the others are numbers in words. */
    @TemplateData
    public record Figures(String caption, List<String> columns, List<List<String>> rows) {
        String asText() {
            return caption + "\n" + String.join("\t", columns) + "\n"
                    + rows.stream().map(row -> String.join("\t", row)).collect(Collectors.joining("\n"));
        }
    }

    public Figures first() {
        return tables.get(0);
    }

    public List<Figures> rest() {
        return tables.subList(1, tables.size());
    }

    /** All of it as plain text to put into a report, with the citation and the address that gives it again. */
    public String asText(String title, String address) {
        StringBuilder text =
                new StringBuilder(title).append("\n").append(headline).append("\n");
        notes.forEach(note -> text.append(note).append("\n"));
        tables.forEach(table -> text.append("\n").append(table.asText()).append("\n"));
        text.append("\nAssumes\n");
        assumptions.forEach(assumption -> text.append("- ").append(assumption).append("\n"));
        return text.append("\nMethod: ")
                .append(source)
                .append("\nComputed with Dentary: ")
                .append(address)
                .append("\n")
                .toString();
    }
}
