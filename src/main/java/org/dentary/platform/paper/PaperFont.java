package org.dentary.platform.paper;

import com.lowagie.text.DocumentException;
import com.lowagie.text.Font;
import com.lowagie.text.pdf.BaseFont;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** The fonts of papers: text with the Latin, Greek and Cyrillic letters, embedded, and codes of equally wide characters. */
public final class PaperFont {
    private static final BaseFont CODE = builtIn(BaseFont.COURIER_BOLD);
    private static final BaseFont TEXT = embedded();

    private PaperFont() {}

    /** Running text of a size in points. */
    public static Font text(float points) {
        return new Font(TEXT, points);
    }

    /** The same, heavier. */
    public static Font strong(float points) {
        return new Font(TEXT, points, Font.BOLD);
    }

    /** Codes and hashes; Latin letters and digits only. */
    public static Font code(float points) {
        return new Font(CODE, points);
    }

    /** The face of codes in clear: all characters are equally wide, so every code of a size is. */
    public static BaseFont codeFace() {
        return CODE;
    }

    /** The face of all other text, embedded, with the Latin, Greek and Cyrillic letters. */
    public static BaseFont textFace() {
        return TEXT;
    }

    /** One of the faces every reader of PDF has, such as {@link BaseFont#HELVETICA_BOLD}; Latin letters only. */
    public static BaseFont builtIn(String name) {
        try {
            return BaseFont.createFont(name, BaseFont.WINANSI, BaseFont.NOT_EMBEDDED);
        } catch (DocumentException | IOException fault) {
            throw new IllegalStateException("The PDF library has no font " + name, fault);
        }
    }

    /** A fresh copy each time would be embedded anew; one serves all documents. */
    private static BaseFont embedded() {
        String file = "font-fallback/LiberationSans-Regular.ttf";
        try (InputStream font = BaseFont.class.getClassLoader().getResourceAsStream(file)) {
            return BaseFont.createFont(file, BaseFont.IDENTITY_H, BaseFont.EMBEDDED, true, font.readAllBytes(), null);
        } catch (DocumentException | IOException fault) {
            throw new UncheckedIOException(new IOException("The PDF library's font cannot be read", fault));
        }
    }
}
