package org.dentary.prevalence.chart;

import java.awt.Color;
import java.awt.Font;
import java.awt.FontFormatException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;

/**
 * The inks and the lettering of a picture. On a screen the inks are placeholders that the page's own take the place of; on
 * paper they are dark enough to be told from white in grey, and marks differ by shape besides.
 */
public record ChartInks(Color ink, Color faint, Color ground, List<Color> series, Font lettering) {
    public static final ChartInks PLACEHOLDERS = new ChartInks(
            new Color(17, 18, 19),
            new Color(17, 18, 20),
            new Color(17, 18, 24),
            List.of(new Color(17, 18, 21), new Color(17, 18, 22), new Color(17, 18, 23)),
            new Font(Font.SANS_SERIF, Font.PLAIN, 13));
    public static final ChartInks PAPER = new ChartInks(
            new Color(0x111111),
            new Color(0xc8c8c8),
            Color.WHITE,
            List.of(new Color(0x1f4e79), new Color(0xa14a12), new Color(0x555555)),
            liberation());

    /** The ink of a series; those beyond the last begin again. */
    public Color series(int index) {
        return series.get(index % series.size());
    }

    /** The font that the PDF library carries, so that paper looks the same on every machine. */
    private static Font liberation() {
        try (InputStream font =
                ChartInks.class.getClassLoader().getResourceAsStream("font-fallback/LiberationSans-Regular.ttf")) {
            return Font.createFont(Font.TRUETYPE_FONT, font).deriveFont(13f);
        } catch (FontFormatException | IOException fault) {
            throw new UncheckedIOException(new IOException("The PDF library's font cannot be read", fault));
        }
    }
}
