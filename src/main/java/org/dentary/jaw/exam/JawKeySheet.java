package org.dentary.jaw.exam;

import static org.dentary.jaw.exam.SheetPen.HEAD;
import static org.dentary.jaw.exam.SheetPen.SMALL;
import static org.dentary.jaw.exam.SheetPen.STRONG;
import static org.dentary.jaw.exam.SheetPen.TEXT;
import static org.dentary.jaw.exam.SheetPen.TITLE;
import static org.dentary.jaw.exam.SheetPen.bare;
import static org.dentary.jaw.exam.SheetPen.cell;
import static org.dentary.jaw.exam.SheetPen.drawing;
import static org.dentary.jaw.exam.SheetPen.listed;
import static org.dentary.jaw.exam.SheetPen.paragraph;
import static org.dentary.jaw.exam.SheetPen.ruled;
import static org.dentary.jaw.exam.SheetPen.spaced;
import static org.dentary.jaw.exam.SheetPen.table;

import com.lowagie.text.Document;
import com.lowagie.text.Element;
import com.lowagie.text.Font;
import com.lowagie.text.FontFactory;
import com.lowagie.text.PageSize;
import com.lowagie.text.Paragraph;
import com.lowagie.text.Phrase;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.PdfWriter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.MonthDay;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.dentary.cautions.CautionView;
import org.dentary.jaw.key.AgeingPlan;
import org.dentary.jaw.key.Certainty;
import org.dentary.jaw.key.JawAnswer;
import org.dentary.jaw.key.JawContext;
import org.dentary.jaw.key.JawKey;
import org.dentary.jaw.key.KeyClass;
import org.dentary.jaw.key.KeyQuestion;

/**
 * The printed key: one US Letter page, black on white, from the same questions, drawings and rules as the page and the service.
 * The classes in its table are not written here but asked of {@link JawKey}.
 */
final class JawKeySheet {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("MMMM d", Locale.US);

    /** Sizes of the small print, tried until everything stands on one page: a program's own cautions may be longer. */
    private static final float[] SMALL_PRINT = {7.6f, 7.2f, 6.8f, 6.2f, 5.6f};

    private JawKeySheet() {}

    /**
     * The page as PDF; its bytes differ from call to call, its words and drawings do not.
     *
     * @param cautions those in force where jaws are handled, in the order printed
     */
    static byte[] pdf(AgeingPlan plan, List<CautionView> cautions) {
        byte[] page = {};
        for (float size : SMALL_PRINT) {
            page = write(plan, cautions, FontFactory.getFont(FontFactory.HELVETICA, size));
            if (pages(page) == 1) {
                break;
            }
        }
        return page;
    }

    private static byte[] write(AgeingPlan plan, List<CautionView> cautions, Font small) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        Document page = new Document(PageSize.LETTER, 36, 36, 26, 22);
        PdfWriter writer = PdfWriter.getInstance(page, bytes);
        page.addTitle("Ageing a deer from its lower jaw");
        page.open();
        page.add(head(writer));
        page.add(questions(writer));
        page.add(classes(plan));
        page.add(below(cautions, small));
        page.add(foot(plan));
        page.close();
        return bytes.toByteArray();
    }

    private static int pages(byte[] pdf) {
        try (PdfReader reader = new PdfReader(pdf)) {
            return reader.getNumberOfPages();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static PdfPTable head(PdfWriter writer) {
        PdfPTable table = table(1.6f, 1f);
        PdfPCell words = bare();
        words.addElement(paragraph("Ageing a white-tailed deer from its lower jaw", TITLE));
        words.addElement(spaced(paragraph(
                "Count the cheek teeth of one side from the front, 1 to 6. The third tooth (position 3) is dp4 as a milk"
                        + " tooth and P4 as a permanent one; the sixth (position 6) is M3. Stripes in the drawings are"
                        + " dentine, brown in the jaw.",
                TEXT)));
        table.addCell(words);
        PdfPCell jaw = bare();
        jaw.addElement(drawing(writer, "jaw-side", 190));
        table.addCell(jaw);
        return table;
    }

    private static PdfPTable questions(PdfWriter writer) {
        PdfPTable table = table(1.35f, 2.6f);
        for (KeyQuestion question : KeyQuestion.values()) {
            if (question == KeyQuestion.SIXTH_DENTINE) {
                continue;
            }
            PdfPCell words = ruled();
            ask(words, question);
            if (question == KeyQuestion.THIRD_DENTINE) {
                ask(words, KeyQuestion.SIXTH_DENTINE);
            }
            table.addCell(words);
            PdfPTable answers = new PdfPTable(question.answers().size());
            for (KeyQuestion.Answer answer : question.answers()) {
                PdfPCell cell = bare();
                cell.addElement(
                        drawing(writer, answer.drawing(), question.answers().size() == 4 ? 74 : 66));
                Paragraph caption = paragraph(answer.words(), STRONG);
                caption.setAlignment(Element.ALIGN_CENTER);
                cell.addElement(caption);
                answers.addCell(cell);
            }
            PdfPCell pictures = ruled();
            pictures.addElement(answers);
            table.addCell(pictures);
        }
        return table;
    }

    private static void ask(PdfPCell cell, KeyQuestion question) {
        cell.addElement(paragraph(question.ordinal() + 1 + "  " + question.question(), HEAD));
        cell.addElement(paragraph(question.hint(), SMALL));
    }

    private static PdfPTable classes(AgeingPlan plan) {
        PdfPTable table = table(3.6f, 3.5f, 0.95f, 0.8f);
        table.setSpacingBefore(5);
        for (String head : List.of("Seen", "Class", "Nov. months", "Certainty")) {
            PdfPCell cell = ruled();
            cell.setPhrase(new Phrase(head, HEAD));
            table.addCell(cell);
        }
        for (SheetExample row : SheetExample.ALL) {
            JawAnswer answer = JawKey.answer(row.observation(), JawContext.NONE, plan);
            table.addCell(cell(row.seen(), TEXT));
            table.addCell(cell(answer.label(), STRONG));
            table.addCell(cell(
                    answer.novemberMonths() == null
                            ? ""
                            : answer.novemberMonths() + (answer.keyClass() == KeyClass.ADULT ? " or more" : ""),
                    TEXT));
            table.addCell(cell(words(answer.certainty()), TEXT));
        }
        return table;
    }

    private static PdfPTable below(List<CautionView> cautions, Font small) {
        PdfPTable table = table(1f, 1.75f);
        table.setSpacingBefore(4);
        PdfPCell again = bare();
        again.addElement(paragraph("Look again", HEAD));
        for (String rule : List.of("J14", "K01")) {
            again.addElement(listed(JawKey.message(rule), small));
        }
        again.addElement(listed(
                "\"Unsure\" and \"could not see\" are answers: the class stays open and someone else reads the jaw. Antlers and"
                        + " body size never enter the age.",
                small));
        table.addCell(again);
        PdfPCell heed = bare();
        heed.addElement(paragraph("Cautions (in brackets who decides; * not reviewed locally)", HEAD));
        cautions.forEach(caution -> heed.addElement(
                listed(caution.text() + " (" + caution.authority() + (caution.reviewed() ? "" : "*") + ")", small)));
        heed.addElement(listed(
                "Your program's, laboratory's, health agency's and safety officer's written instructions stand above this"
                        + " sheet.",
                small));
        table.addCell(heed);
        return table;
    }

    private static Paragraph foot(AgeingPlan plan) {
        Paragraph foot = paragraph(
                "Ages are estimates: not for enforcement or prizes. For herds born about "
                        + day(plan.birthPeak())
                        + " ("
                        + day(plan.birthStart()) + " to " + day(plan.birthEnd()) + "). Rules " + JawKey.RULE_SET_VERSION
                        + ", common practice; local instructions come first.",
                SMALL);
        foot.setSpacingBefore(4);
        return foot;
    }

    private static String words(Certainty certainty) {
        return switch (certainty) {
            case CLEAR -> "Clear";
            case PROBABLE -> "Probable";
            case UNRESOLVED -> "Unresolved";
        };
    }

    private static String day(MonthDay day) {
        return DAY.format(day);
    }
}
