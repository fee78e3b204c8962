package org.dentary.prevalence.truth;

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
import org.dentary.plan.PlanClock;
import org.dentary.plan.PlanService;
import org.dentary.platform.paper.PaperFooter;
import org.dentary.prevalence.Names;
import org.dentary.prevalence.chart.ChartInks;
import org.dentary.prevalence.document.Fact;
import org.dentary.prevalence.document.PdfPictures;
import org.dentary.prevalence.document.PdfStyle;
import org.dentary.prevalence.linelist.FilterWords;
import org.dentary.prevalence.performance.PerformanceSet;
import org.dentary.prevalence.pictures.Picture;
import org.dentary.prevalence.table.DimensionValues;

/**
 * A report as a PDF: what it stands on and the set, warnings, apparent beside true, the picture, the tests that the animals
 * had, from taken to counted, how to read it, methods with their sources, cautions, and what makes it again. Its figures are the
 * answer's, rounded as the page rounds.
 */
@ApplicationScoped
class TruthPdf {
    private static final Font TOTAL = new Font(PdfStyle.SMALL.getBaseFont(), PdfStyle.SMALL.getSize(), Font.BOLD);
    private static final float GROUP_WIDTH = 1.8f;
    private static final float[] FIGURES = {1.85f, 1.95f, 2.1f, 2.6f, 2.1f, 2.6f, 1.3f, 2.1f};
    private static final List<String> HEADS = List.of(
            "Counted", "Detected", "Apparent", "Interval", "True", "Interval of the true", "Uncut", "Tested otherwise");

    private final DimensionValues values;
    private final PlanService plan;
    private final Names names;
    private final FilterWords filters;
    private final PlanClock zone;

    TruthPdf(DimensionValues values, PlanService plan, Names names, FilterWords filters, PlanClock zone) {
        this.values = values;
        this.plan = plan;
        this.names = names;
        this.filters = filters;
        this.zone = zone;
    }

    /** @param digest SHA-256 of the answer as JSON */
    byte[] of(TruthAnswers.Answer answer, String digest, URI base) {
        TruthReport report = answer.report();
        TruthTable table = TruthTable.of(report, values);
        String stands = (report.cut() == null
                        ? "Live, as of "
                        : "Data cut \"" + report.cut().name() + "\" of ")
                + zone.told(report.asOf());
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (Document document = new Document(
                PageSize.LETTER, PdfStyle.MARGIN, PdfStyle.MARGIN, PdfStyle.MARGIN, PdfStyle.MARGIN + 14)) {
            PdfWriter writer = PdfWriter.getInstance(document, out);
            writer.setPageEvent(new PaperFooter("True prevalence " + report.season() + ". " + stands, ""));
            String title = title(report);
            document.addTitle("True prevalence: " + title);
            document.addCreator("Dentary");
            document.setDocumentLanguage("en-US");
            document.open();
            document.add(PdfStyle.text("True prevalence", PdfStyle.STRONG));
            document.add(PdfStyle.text(title, PdfStyle.TITLE));
            if (answer.superseded() != null) {
                document.add(PdfStyle.caution("This data cut is superseded: " + answer.superseded()));
            }
            document.add(asked(report, stands));
            report.warnings().forEach(warning -> document.add(PdfStyle.caution(warning)));
            document.add(PdfStyle.heading("Apparent and true"));
            document.add(figures(table));
            document.add(picture(writer, table));
            words(document, table);
            document.add(PdfStyle.kept(PdfStyle.heading("Tests that the counted animals had"), tests(report.tested())));
            document.add(PdfStyle.kept(PdfStyle.heading("From taken to counted"), steps(report)));
            PdfStyle.section(document, "How to read it", report.notes());
            PdfStyle.section(
                    document,
                    "Methods and where they come from",
                    report.methods().stream()
                            .map(method -> method.what() + ". " + method.source() + ".")
                            .toList());
            document.add(PdfStyle.heading("Cautions"));
            report.cautions().forEach(caution -> document.add(PdfStyle.caution(caution)));
            document.add(again(answer, digest, base));
        } catch (DocumentException fault) {
            throw new IllegalStateException("The report could not be laid out", fault);
        }
        return out.toByteArray();
    }

    private String title(TruthReport report) {
        return (report.incomplete() ? "Incomplete: " : "") + names.disease(report.disease()) + " in "
                + names.species(report.species()).toLowerCase(Locale.US) + ", " + names.season(report.season());
    }

    private PdfPTable asked(TruthReport report, String stands) {
        PerformanceSet set = report.performance();
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact("Stands on", stands));
        report.filter()
                .forEach((field, accepted) ->
                        facts.add(new Fact(FilterWords.name(field), filters.values(field, accepted))));
        facts.add(new Fact("Test performance", set.name() + " (" + set.code() + ")"));
        facts.add(new Fact("Speaks of", TruthWords.tests(set, TruthWords.methodNames(plan))));
        facts.add(new Fact("Sensitivity", set.getSensitivityWords()));
        facts.add(new Fact("Specificity", set.getSpecificityWords()));
        facts.add(new Fact("Held against", set.reference() + ", in " + set.population()));
        facts.add(new Fact("Source", set.source() + "; " + set.getSeenWords()));
        return PdfStyle.facts(facts);
    }

    private static PdfPTable figures(TruthTable figures) {
        int groups = figures.heads().size();
        float[] widths = new float[groups + FIGURES.length];
        IntStream.range(0, groups).forEach(i -> widths[i] = GROUP_WIDTH);
        System.arraycopy(FIGURES, 0, widths, groups, FIGURES.length);
        PdfPTable table = PdfStyle.table(widths);
        figures.heads().forEach(head -> table.addCell(PdfStyle.head(head, false)));
        HEADS.forEach(head -> table.addCell(PdfStyle.head(head, true)));
        table.setHeaderRows(1);
        figures.rows().forEach(row -> row(table, row.groups(), row, PdfStyle.SMALL));
        List<String> all = new ArrayList<>(List.of("All"));
        IntStream.range(1, groups).forEach(i -> all.add(""));
        row(table, all, figures.total(), TOTAL);
        return table;
    }

    private static void row(PdfPTable table, List<String> groups, TruthTable.Row row, Font font) {
        groups.forEach(group -> table.addCell(PdfStyle.cell(group, font, false)));
        for (String figure : List.of(
                String.valueOf(row.counted()),
                String.valueOf(row.detected()),
                row.share(),
                row.limits(),
                row.truth(),
                row.truthLimits(),
                row.raw(),
                row.otherwise())) {
            table.addCell(PdfStyle.cell(figure, font, true));
        }
    }

    private static PdfPTable picture(PdfWriter writer, TruthTable table) {
        TruthDrawing drawing = new TruthDrawing(table, ChartInks.PAPER, false);
        return PdfStyle.kept(
                PdfStyle.heading("The same as a picture"),
                PdfPictures.image(
                        writer,
                        new Picture.Plate(drawing.width(), drawing.height(), drawing::draw),
                        "Apparent and true prevalence with their intervals, the figures of the table above"),
                PdfStyle.text(
                        "Circle: apparent prevalence. Diamond: true prevalence by the set. Lines are the intervals. Where"
                                + " nobody was sampled there is no mark.",
                        PdfStyle.SMALL));
    }

    private static void words(Document document, TruthTable table) {
        List<String> words = new ArrayList<>();
        table.getSampled().forEach(row -> words.add(String.join(", ", row.groups()) + ": " + row.sentence()));
        words.add("All: " + table.total().sentence());
        PdfStyle.section(document, "In words", words);
    }

    private static PdfPTable tests(Tested tested) {
        PdfPTable table = PdfStyle.table(3, 3, 1, 1);
        List.of("Method", "Tissue", "In the set").forEach(head -> table.addCell(PdfStyle.head(head, false)));
        table.addCell(PdfStyle.head("Animals", true));
        table.setHeaderRows(1);
        tested.tests().forEach(test -> {
            table.addCell(PdfStyle.cell(test.methodName(), PdfStyle.TEXT, false));
            table.addCell(
                    PdfStyle.cell(test.getTissueWords() + (test.pool() ? ", in a pool" : ""), PdfStyle.TEXT, false));
            table.addCell(PdfStyle.cell(test.inSet() ? "Yes" : "No", PdfStyle.TEXT, false));
            table.addCell(PdfStyle.cell(String.valueOf(test.animals()), PdfStyle.TEXT, true));
        });
        return table;
    }

    private static PdfPTable steps(TruthReport report) {
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

    private static PdfPTable again(TruthAnswers.Answer answer, String digest, URI base) {
        String address = base.resolve("/api/v1/true-prevalence?"
                        + answer.question().report().query() + "&performance="
                        + answer.question().performance())
                .toString();
        return PdfStyle.kept(
                PdfStyle.heading("To make it again"),
                PdfStyle.text(
                        answer.report().cut() == null
                                ? "These are figures of a moment: the same address answers with what is known when it is"
                                        + " asked. Make a data cut to have the same figures for ever."
                                : "This address answers with the same bytes for ever; their SHA-256 is below.",
                        PdfStyle.TEXT),
                PdfStyle.text(address, PdfStyle.SMALL),
                PdfStyle.text("SHA-256 of the answer as JSON: " + digest, PdfStyle.SMALL));
    }
}
