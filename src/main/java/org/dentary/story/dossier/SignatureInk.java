package org.dentary.story.dossier;

import com.lowagie.text.BadElementException;
import com.lowagie.text.Image;
import com.lowagie.text.pdf.PdfTemplate;
import com.lowagie.text.pdf.PdfWriter;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dentary.custody.handover.Signature;

/** A drawn signature as lines on paper. */
final class SignatureInk {
    private static final Pattern STEP = Pattern.compile("([ML])(\\d+) (\\d+)");
    private static final float WIDTH_POINTS = 150;

    private SignatureInk() {}

    /** @param strokes as {@link Signature} takes them */
    static Image of(PdfWriter writer, String strokes) {
        PdfTemplate field = writer.getDirectContent().createTemplate(Signature.WIDTH, Signature.HEIGHT);
        field.setLineWidth(4);
        field.setLineCap(1);
        field.setLineJoin(1);
        Matcher step = STEP.matcher(strokes);
        while (step.find()) {
            float x = Float.parseFloat(step.group(2));
            float y = Signature.HEIGHT - Float.parseFloat(step.group(3));
            if (step.group(1).equals("M")) {
                field.moveTo(x, y);
            } else {
                field.lineTo(x, y);
            }
        }
        field.stroke();
        try {
            Image image = Image.getInstance(field);
            image.scaleToFit(WIDTH_POINTS, WIDTH_POINTS * Signature.HEIGHT / Signature.WIDTH);
            return image;
        } catch (BadElementException fault) {
            throw new IllegalStateException(fault);
        }
    }
}
