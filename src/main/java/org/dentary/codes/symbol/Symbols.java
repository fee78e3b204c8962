package org.dentary.codes.symbol;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.Dimension;
import com.google.zxing.EncodeHintType;
import com.google.zxing.Writer;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.datamatrix.DataMatrixWriter;
import com.google.zxing.datamatrix.encoder.SymbolShapeHint;
import com.google.zxing.oned.Code128Writer;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.util.Map;
import org.dentary.codes.LabelCode;
import org.dentary.codes.TypedText;

/** Makes the symbols of a code. All labels of one length have symbols of one size, whatever their characters. */
public final class Symbols {

    private Symbols() {}

    /** The symbol of a label's code; the text is the ten characters without hyphens. */
    public static Symbol of(Symbology symbology, LabelCode code) {
        return of(symbology, code.value());
    }

    /**
     * The symbol of a text.
     *
     * @param text 1 to 40 characters of upper-case letters, digits and hyphens
     * @throws IllegalArgumentException where the text is anything else
     */
    public static Symbol of(Symbology symbology, String text) {
        if (!text.matches("[0-9A-Z-]{1,40}")) {
            throw new IllegalArgumentException(
                    "A symbol holds 1 to 40 upper-case letters, digits and hyphens, not " + TypedText.shown(text));
        }
        try {
            return new Symbol(symbology, text, modules(symbology, text));
        } catch (WriterException fault) {
            throw new IllegalStateException("A text of the allowed characters has a symbol", fault);
        }
    }

    @SuppressWarnings("deprecation") // MIN_SIZE, the only way to hold a Data Matrix to one size
    private static BitMatrix modules(Symbology symbology, String text) throws WriterException {
        return switch (symbology) {
            // Set B throughout: set C would shorten codes with many digits, and labels would differ in width.
            case CODE_128 ->
                draw(
                        new Code128Writer(),
                        BarcodeFormat.CODE_128,
                        text,
                        Map.of(EncodeHintType.MARGIN, 0, EncodeHintType.FORCE_CODE_SET, "B"));
            // Codes with many digits would fit 14 x 14 modules, and labels would differ in size.
            case DATA_MATRIX ->
                draw(
                        new DataMatrixWriter(),
                        BarcodeFormat.DATA_MATRIX,
                        text,
                        Map.of(
                                EncodeHintType.DATA_MATRIX_SHAPE,
                                SymbolShapeHint.FORCE_SQUARE,
                                EncodeHintType.MIN_SIZE,
                                new Dimension(16, 16)));
            // Level Q restores a quarter of the symbol, for labels that get wet.
            case QR ->
                draw(
                        new QRCodeWriter(),
                        BarcodeFormat.QR_CODE,
                        text,
                        Map.of(EncodeHintType.MARGIN, 0, EncodeHintType.ERROR_CORRECTION, ErrorCorrectionLevel.Q));
        };
    }

    private static BitMatrix draw(Writer writer, BarcodeFormat format, String text, Map<EncodeHintType, ?> hints)
            throws WriterException {
        return writer.encode(text, format, 1, 1, hints);
    }
}
