package org.dentary.codes;

import com.lowagie.text.Font;

/** The fonts of papers: text with the Latin, Greek and Cyrillic letters, embedded, and codes of equally wide characters. */
public final class PaperFont {
    private PaperFont() {}

    /** Running text of a size in points. */
    public static Font text(float points) {
        return new Font(LabelPen.textFont(), points);
    }

    /** The same, heavier. */
    public static Font strong(float points) {
        return new Font(LabelPen.textFont(), points, Font.BOLD);
    }

    /** Codes and hashes; Latin letters and digits only. */
    public static Font code(float points) {
        return new Font(LabelPen.codeFont(), points);
    }
}
