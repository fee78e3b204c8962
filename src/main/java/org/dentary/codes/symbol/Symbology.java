package org.dentary.codes.symbol;

import java.util.Optional;
import java.util.stream.Stream;

/**
 * The symbols in which a code is printed, each with what its standard asks. Least modules are the smallest that common
 * hand scanners read; they are common practice, no source.
 */
public enum Symbology {
    /** Code 128 (ISO/IEC 15417:2007): quiet zones of at least 10 modules left and right. */
    CODE_128("code128", "Code 128", "ISO/IEC 15417", 10, 0.19),
    /** Data Matrix ECC 200 (ISO/IEC 16022:2006): a quiet zone of at least 1 module around; 2 are kept. */
    DATA_MATRIX("datamatrix", "Data Matrix", "ISO/IEC 16022", 2, 0.25),
    /** QR code (ISO/IEC 18004:2015): a quiet zone of at least 4 modules around. */
    QR("qr", "QR code", "ISO/IEC 18004", 4, 0.25);

    private final String word;
    private final String label;
    private final String standard;
    private final int quietModules;
    private final double leastModuleMm;

    Symbology(String word, String label, String standard, int quietModules, double leastModuleMm) {
        this.word = word;
        this.label = label;
        this.standard = standard;
        this.quietModules = quietModules;
        this.leastModuleMm = leastModuleMm;
    }

    /** The symbology that a request's word names, such as {@code datamatrix}; empty for any other word. */
    public static Optional<Symbology> named(String word) {
        return Stream.of(values())
                .filter(symbology -> symbology.word.equals(word))
                .findFirst();
    }

    /** The word for it in addresses. */
    public String word() {
        return word;
    }

    /** Its name in plain words. */
    public String label() {
        return label;
    }

    /** The standard it is drawn to. */
    public String standard() {
        return standard;
    }

    /** The modules of white kept on each side (of Code 128, left and right). */
    public int quietModules() {
        return quietModules;
    }

    /** The smallest module worth printing, in millimetres. */
    public double leastModuleMm() {
        return leastModuleMm;
    }

    /** Whether it is one row of bars rather than a field of squares. */
    public boolean isLinear() {
        return this == CODE_128;
    }
}
