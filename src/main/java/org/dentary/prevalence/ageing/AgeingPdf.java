package org.dentary.prevalence.ageing;

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
import java.util.Map;
import java.util.stream.Stream;
import org.dentary.plan.PlanClock;
import org.dentary.platform.paper.PaperFooter;
import org.dentary.prevalence.Names;
import org.dentary.prevalence.chart.ChartInks;
import org.dentary.prevalence.document.Fact;
import org.dentary.prevalence.document.PdfPictures;
import org.dentary.prevalence.document.PdfStyle;
import org.dentary.prevalence.linelist.FilterWords;
import org.dentary.prevalence.pictures.Picture;

/**
 * A what-if as a PDF that says on every page that it is one: what it stands on and the matrix, warnings, the sentences, as read
 * beside the what-if, the picture, adults against yearlings, the matrix's figures, what has to hold, notes, cautions, and what
 * makes it again. Its figures are the answer's, rounded as the page rounds.
 */
@ApplicationScoped
class AgeingPdf {
    private static final String KIND = "What-if: ageing error";

    private final Names names;
    private final FilterWords filters;
    private final PlanClock clocks;

    AgeingPdf(Names names, FilterWords filters, PlanClock clocks) {
        this.names = names;
        this.filters = filters;
        this.clocks = clocks;
    }

    byte[] of(AgeingAnswers.Answer answer, URI base) {
        AgeingWhatIf whatIf = answer.whatIf();
        AgeingTable table = AgeingTable.of(answer, clocks);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (Document document = new Document(
                PageSize.LETTER, PdfStyle.MARGIN, PdfStyle.MARGIN, PdfStyle.MARGIN, PdfStyle.MARGIN + 14)) {
            PdfWriter writer = PdfWriter.getInstance(document, out);
            writer.setPageEvent(new PaperFooter(KIND + ", " + whatIf.season() + ", " + table.standsOn(), ""));
            String title = title(whatIf);
            document.addTitle(KIND + ": " + title);
            document.addCreator("Dentary");
            document.setDocumentLanguage("en-US");
            document.open();
            document.add(PdfStyle.text(KIND, PdfStyle.STRONG));
            document.add(PdfStyle.text(title, PdfStyle.TITLE));
            if (answer.superseded() != null) {
                document.add(PdfStyle.caution("This data cut is superseded: " + answer.superseded()));
            }
            document.add(facts(answer, table));
            whatIf.warnings().forEach(warning -> document.add(PdfStyle.caution(warning)));
            PdfStyle.section(document, "In words", whatIf.sentences());
            document.add(PdfStyle.heading("As read and what-if"));
            document.add(classes(table));
            document.add(picture(writer, whatIf));
            document.add(PdfStyle.kept(
                    PdfStyle.heading("Adults against yearlings"),
                    steps(table),
                    PdfStyle.text(
                            "Points: prevalence of adults less that of yearlings. Read again: what readers with this error"
                                    + " would tell if the classes as read were the true ones.",
                            PdfStyle.SMALL)));
            document.add(PdfStyle.kept(PdfStyle.heading("The ageing error assumed"), matrix(table)));
            PdfStyle.section(document, "What has to hold", whatIf.assumptions());
            PdfStyle.section(document, "Notes", whatIf.notes());
            document.add(PdfStyle.heading("Cautions"));
            whatIf.cautions().forEach(caution -> document.add(PdfStyle.caution(caution)));
            document.add(again(answer, base));
        } catch (DocumentException fault) {
            throw new IllegalStateException("The what-if could not be laid out", fault);
        }
        return out.toByteArray();
    }

    private String title(AgeingWhatIf whatIf) {
        return (whatIf.incomplete() ? "Incomplete: " : "") + names.disease(whatIf.disease()) + " by age class, "
                + names.season(whatIf.season());
    }

    private PdfPTable facts(AgeingAnswers.Answer answer, AgeingTable table) {
        ErrorMatrix matrix = answer.whatIf().matrix();
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact("Stands on", table.standsOn()));
        fields(facts, "", answer.filters());
        fields(facts, "Counts ", answer.whatIf().scope());
        facts.add(new Fact("Ageing error", matrix.name() + " (" + matrix.code() + "), " + matrix.day()));
        facts.add(new Fact("Kind", table.getKind()));
        facts.add(new Fact("Source", matrix.source()));
        return PdfStyle.facts(facts);
    }

    private void fields(List<Fact> facts, String before, Map<String, List<String>> fields) {
        fields.forEach((field, values) -> {
            String name = FilterWords.name(field);
            facts.add(new Fact(
                    before.isEmpty() ? name : before + name.toLowerCase(java.util.Locale.US),
                    filters.values(field, values)));
        });
    }

    private static PdfPTable classes(AgeingTable figures) {
        PdfPTable table = PdfStyle.table(1.2f, 1.6f, 1.6f, 1.6f, 2, 2.2f, 1.4f);
        heads(
                table,
                2,
                "Sex",
                "Age class",
                "As read",
                "Prevalence as read",
                "What-if",
                "What-if prevalence",
                "Change, points");
        figures.rows()
                .forEach(row -> row(
                        table,
                        2,
                        row.sex(),
                        row.age(),
                        row.read(),
                        row.readShare(),
                        row.whatIf(),
                        row.whatIfShare(),
                        row.change()));
        return table;
    }

    private static PdfPTable steps(AgeingTable figures) {
        PdfPTable table = PdfStyle.table(1.2f, 1.5f, 1.5f, 1.5f, 1.5f, 1.5f);
        heads(table, 1, "Sex", "Points as read", "What-if", "Read again", "Times as read", "What-if");
        figures.steps()
                .forEach(step -> row(
                        table,
                        1,
                        step.sex(),
                        step.points(),
                        step.whatIfPoints(),
                        step.again(),
                        step.ratio(),
                        step.whatIfRatio()));
        return table;
    }

    private static PdfPTable matrix(AgeingTable figures) {
        PdfPTable table = PdfStyle.table(1, 1.2f, 1.5f, 1.5f, 1.5f, 2);
        heads(table, 2, "Sex", "True class", "Read as fawn", "as yearling", "as adult", "Readings");
        figures.matrix()
                .forEach(row -> row(
                        table,
                        2,
                        Stream.of(List.of(row.sex(), row.trueClass()), row.reads(), List.of(row.readings()))
                                .flatMap(List::stream)
                                .toArray(String[]::new)));
        return table;
    }

    private static void heads(PdfPTable table, int words, String... heads) {
        for (int i = 0; i < heads.length; i++) {
            table.addCell(PdfStyle.head(heads[i], i >= words));
        }
        table.setHeaderRows(1);
    }

    private static void row(PdfPTable table, int words, String... cells) {
        Font font = cells[0].equals("All") ? PdfStyle.STRONG : PdfStyle.TEXT;
        for (int i = 0; i < cells.length; i++) {
            table.addCell(PdfStyle.cell(cells[i], font, i >= words));
        }
    }

    private static PdfPTable picture(PdfWriter writer, AgeingWhatIf whatIf) {
        AgeingPicture picture = AgeingPicture.wide(whatIf);
        return PdfStyle.kept(
                PdfStyle.heading("The same as a picture"),
                PdfPictures.image(
                        writer,
                        new Picture.Plate(picture.width(), picture.height(), picture.draw(ChartInks.PAPER)),
                        picture.words()),
                PdfStyle.text(
                        "What-if. Filled circle: prevalence as read. Hollow diamond: what it would be. No interval is drawn,"
                                + " because none is claimed.",
                        PdfStyle.SMALL));
    }

    private static PdfPTable again(AgeingAnswers.Answer answer, URI base) {
        return PdfStyle.kept(
                PdfStyle.heading("To make it again"),
                PdfStyle.text(
                        answer.whatIf().cut() == null
                                ? "These are figures of a moment: the same address answers with what is known when it is"
                                        + " asked. Make a data cut to have the same figures for ever."
                                : "This address answers with the same bytes for ever; their SHA-256 is below.",
                        PdfStyle.TEXT),
                PdfStyle.text(
                        base.resolve("/api/v1/ageing-error?" + answer.query()).toString(), PdfStyle.SMALL),
                PdfStyle.text("SHA-256 of the answer as JSON: " + answer.digest(), PdfStyle.SMALL));
    }
}
