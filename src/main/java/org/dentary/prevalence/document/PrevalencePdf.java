package org.dentary.prevalence.document;

import com.lowagie.text.Document;
import com.lowagie.text.DocumentException;
import com.lowagie.text.Font;
import com.lowagie.text.PageSize;
import com.lowagie.text.pdf.PdfPTable;
import com.lowagie.text.pdf.PdfWriter;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.ByteArrayOutputStream;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.dentary.platform.paper.PaperFooter;
import org.dentary.prevalence.PrevalenceAnswers.Answer;
import org.dentary.prevalence.PrevalenceReport;
import org.dentary.prevalence.chart.ChartDrawing;
import org.dentary.prevalence.chart.PrevalenceChart;
import org.dentary.prevalence.pictures.Picture;
import org.dentary.prevalence.table.PrevalenceTable;
import org.dentary.prevalence.table.PrevalenceTables;

/**
 * A report as a PDF: what it is and stands on, warnings, the table, the picture, from taken to counted, the pictures of the season, how to read it,
 * methods with their sources, cautions, and what makes it again. Its figures are the answer's, rounded as the page rounds.
 */
@ApplicationScoped
class PrevalencePdf {
    private static final float GROUP_WIDTH = 2.6f;
    private static final float[] FIGURES = {1.65f, 1.75f, 2.1f, 2.9f, 1.65f, 1.7f, 1.1f};
    private static final List<String> HEADS =
            List.of("Counted", "Detected", "Prevalence", "Interval", "Pending", "Pending share", "Mark");

    private final ReportFacts facts;
    private final PrevalenceTables tables;
    private final PrevalenceChart chart;
    private final PdfPictures pictures;

    PrevalencePdf(ReportFacts facts, PrevalenceTables tables, PrevalenceChart chart, PdfPictures pictures) {
        this.facts = facts;
        this.tables = tables;
        this.chart = chart;
        this.pictures = pictures;
    }

    byte[] of(Answer answer, URI base) {
        PrevalenceReport report = answer.report();
        String title = facts.title(answer);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (Document document = new Document(
                PageSize.LETTER, PdfStyle.MARGIN, PdfStyle.MARGIN, PdfStyle.MARGIN, PdfStyle.MARGIN + 14)) {
            PdfWriter writer = PdfWriter.getInstance(document, out);
            writer.setPageEvent(new PaperFooter("Prevalence " + report.season() + ". " + facts.standsOn(answer), ""));
            document.addTitle("Prevalence: " + title);
            document.addCreator("Dentary");
            document.setDocumentLanguage("en-US");
            document.open();
            document.add(PdfStyle.text("Prevalence", PdfStyle.STRONG));
            document.add(PdfStyle.text(title, PdfStyle.TITLE));
            asked(document, answer);
            report.warnings().forEach(warning -> document.add(PdfStyle.caution(warning)));
            PrevalenceTable table = tables.of(report);
            if (table.across() != null) {
                CrossPdf.add(document, table.across());
            }
            document.add(PdfStyle.heading("Detected of counted"));
            document.add(figures(table));
            if (!table.legend().isEmpty()) {
                document.add(PdfStyle.text(table.legend(), PdfStyle.SMALL));
            }
            document.add(picture(writer, report, table));
            document.add(PdfStyle.kept(PdfStyle.heading("From taken to counted"), steps(report)));
            unknownAge(document, report);
            pictures.add(document, writer, answer);
            reading(document, report);
            document.add(PdfStyle.heading("Cautions"));
            report.cautions().forEach(caution -> document.add(PdfStyle.caution(caution)));
            again(document, answer, base);
        } catch (DocumentException fault) {
            throw new IllegalStateException("The report could not be laid out", fault);
        }
        return out.toByteArray();
    }

    private void asked(Document document, Answer answer) {
        if (answer.superseded() != null) {
            document.add(PdfStyle.caution("This data cut is superseded: " + answer.superseded()));
        }
        document.add(PdfStyle.facts(facts.asked(answer)));
    }

    private static PdfPTable figures(PrevalenceTable figures) {
        int groups = figures.heads().size();
        float[] widths = new float[groups + FIGURES.length];
        IntStream.range(0, groups).forEach(i -> widths[i] = GROUP_WIDTH);
        System.arraycopy(FIGURES, 0, widths, groups, FIGURES.length);
        PdfPTable table = PdfStyle.table(widths);
        figures.heads().forEach(head -> table.addCell(PdfStyle.head(head, false)));
        HEADS.forEach(head -> table.addCell(PdfStyle.head(head, !head.equals("Mark"))));
        table.setHeaderRows(1);
        figures.rows().forEach(row -> row(table, row.groups(), row, PdfStyle.TEXT));
        List<String> all = new ArrayList<>(List.of("All"));
        IntStream.range(1, groups).forEach(i -> all.add(""));
        row(table, all, figures.total(), PdfStyle.STRONG);
        return table;
    }

    private static void row(PdfPTable table, List<String> groups, PrevalenceTable.Row row, Font font) {
        groups.forEach(group -> table.addCell(PdfStyle.cell(group, font, false)));
        for (String figure : List.of(
                String.valueOf(row.counted()),
                String.valueOf(row.detected()),
                row.share(),
                row.limits(),
                String.valueOf(row.pending()),
                row.pendingShare())) {
            table.addCell(PdfStyle.cell(figure, font, true));
        }
        table.addCell(PdfStyle.cell(row.marks(), PdfStyle.TEXT, false));
    }

    /** Heading, picture and caption in one cell, so that no page break comes between them. */
    private PdfPTable picture(PdfWriter writer, PrevalenceReport report, PrevalenceTable table) {
        ChartDrawing drawing = chart.onPaper(report);
        return PdfStyle.kept(
                PdfStyle.heading("The same as a picture"),
                PdfPictures.image(
                        writer,
                        new Picture.Plate(drawing.width(), drawing.height(), drawing::draw),
                        "Prevalence with its interval by "
                                + String.join(" and ", table.heads()).toLowerCase(Locale.US)),
                PdfStyle.text(
                        "Each mark is one row of the table with its interval; where marks differ in shape, the shape tells the last"
                                + " grouping. Where nobody was sampled there is no mark.",
                        PdfStyle.SMALL));
    }

    private static PdfPTable steps(PrevalenceReport report) {
        PdfPTable table = PdfStyle.table(4, 1);
        table.addCell(PdfStyle.head("Each animal leaves at the first step that applies", false));
        table.addCell(PdfStyle.head("Animals", true));
        table.setHeaderRows(1);
        report.takenToCounted().forEach(step -> {
            table.addCell(PdfStyle.cell(step.getWords(), PdfStyle.TEXT, false));
            table.addCell(PdfStyle.cell(String.valueOf(step.animals()), PdfStyle.TEXT, true));
        });
        return table;
    }

    private static void unknownAge(Document document, PrevalenceReport report) {
        if (report.unknownAge().rows().isEmpty()) {
            return;
        }
        document.add(PdfStyle.heading("Counted animals of unknown age"));
        PdfPTable table = PdfStyle.table(1.2f, 2, 4, 1);
        List.of("Sex", "Source", "Why").forEach(head -> table.addCell(PdfStyle.head(head, false)));
        table.addCell(PdfStyle.head("Animals", true));
        table.setHeaderRows(1);
        report.unknownAge().rows().forEach(row -> {
            table.addCell(PdfStyle.cell(row.getSexWords(), PdfStyle.TEXT, false));
            table.addCell(PdfStyle.cell(row.getSourceWords(), PdfStyle.TEXT, false));
            table.addCell(PdfStyle.cell(row.getReasonWords(), PdfStyle.TEXT, false));
            table.addCell(PdfStyle.cell(String.valueOf(row.animals()), PdfStyle.TEXT, true));
        });
        document.add(table);
    }

    private static void reading(Document document, PrevalenceReport report) {
        List<String> notes = new ArrayList<>();
        report.footnotes().forEach(footnote -> notes.add(footnote.text()));
        notes.addAll(report.notes());
        PdfStyle.section(document, "How to read it", notes);
        PdfStyle.section(
                document,
                "Methods and where they come from",
                report.methods().stream()
                        .map(method -> method.what() + ". " + method.source() + ".")
                        .toList());
    }

    private void again(Document document, Answer answer, URI base) {
        document.add(PdfStyle.kept(
                PdfStyle.heading("To make it again"),
                PdfStyle.text(
                        answer.report().cut() == null
                                ? "These are figures of a moment: the same address answers with what is known when it is asked. Make"
                                        + " a data cut to have the same figures for ever."
                                : "This address answers with the same bytes for ever; their SHA-256 is below.",
                        PdfStyle.TEXT),
                PdfStyle.text(facts.address(answer, base), PdfStyle.SMALL),
                PdfStyle.text("SHA-256 of the answer as JSON: " + answer.digest(), PdfStyle.SMALL)));
    }
}
