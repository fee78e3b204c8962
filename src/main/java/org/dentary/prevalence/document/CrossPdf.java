package org.dentary.prevalence.document;

import com.lowagie.text.Document;
import com.lowagie.text.Font;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.prevalence.table.CrossTable;
import org.dentary.prevalence.table.PrevalenceTable;

/** A report's last dimension side by side on paper; more columns than a page is wide go on in a table below. */
final class CrossPdf {
    private static final int ACROSS = 5;

    private CrossPdf() {}

    static void add(Document document, CrossTable across) {
        document.add(PdfStyle.heading(
                String.join(" and ", across.heads()) + " by " + across.head().toLowerCase(java.util.Locale.US)));
        int all = across.columns().size();
        for (int from = 0; from < all; from += ACROSS) {
            document.add(part(across, from, Math.min(all, from + ACROSS)));
        }
        document.add(PdfStyle.text(
                "In each cell: detected of counted, prevalence, its interval, and what is pending.", PdfStyle.SMALL));
    }

    private static PdfPTable part(CrossTable across, int from, int to) {
        int heads = across.heads().size();
        float[] widths = new float[heads + to - from];
        Arrays.fill(widths, 1);
        PdfPTable table = PdfStyle.table(widths);
        across.heads().forEach(head -> table.addCell(PdfStyle.head(head, false)));
        across.columns().subList(from, to).forEach(column -> table.addCell(PdfStyle.head(column, true)));
        table.setHeaderRows(1);
        for (int i = 0; i < across.lines().size(); i++) {
            CrossTable.Line line = across.lines().get(i);
            Font font = i == across.lines().size() - 1 ? PdfStyle.STRONG : PdfStyle.TEXT;
            line.groups().forEach(group -> table.addCell(PdfStyle.cell(group, font, false)));
            line.cells().subList(from, to).forEach(cell -> table.addCell(cell(cell)));
        }
        return table;
    }

    private static PdfPCell cell(PrevalenceTable.Row row) {
        List<String> lines = row.counted() == 0
                ? List.of(row.share(), row.waiting())
                : List.of((row.of() + " " + row.marks()).trim(), row.share(), row.limits(), row.waiting());
        PdfPCell cell = PdfStyle.cell(
                Stream.of(lines)
                        .flatMap(List::stream)
                        .filter(text -> !text.isEmpty())
                        .collect(Collectors.joining("\n")),
                PdfStyle.SMALL,
                true);
        cell.setNoWrap(false);
        return cell;
    }
}
