package org.dentary.prevalence.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.prevalence.chart.PrevalenceChart.Use;
import org.jfree.svg.SVGGraphics2D;
import org.jfree.svg.ViewBox;

/**
 * A drawing made with {@link ChartInks#PLACEHOLDERS} as SVG text: in a page it takes the page's inks, light or dark, as a
 * file those of paper.
 */
public final class ChartSvg {
    private static final String[] SERIES_ON_PAGE = {"var(--series-1)", "var(--series-2)", "var(--series-3)"};
    private static final Pattern STYLE = Pattern.compile("style=([\"'])(.*?)\\1");

    private ChartSvg() {}

    /**
     * @param width pixels across
     * @param height pixels down
     * @param draw draws with its top left corner at the canvas's origin
     * @param title what it shows, for those who do not see it
     * @param description its figures in words
     */
    public static String of(
            int width, int height, Consumer<Graphics2D> draw, String title, String description, Use use) {
        SVGGraphics2D canvas = new SVGGraphics2D(width, height);
        // Not the library's clock reading, so that one drawing has the same bytes each time and none shares ids on a
        // page.
        canvas.setDefsKeyPrefix(use.name().toLowerCase(Locale.ROOT) + Integer.toHexString(title.hashCode()) + "-");
        draw.accept(canvas);
        String svg = canvas.getSVGElement(null, true, new ViewBox(0, 0, width, height), null, null);
        String told = "<title>" + escape(title) + "</title><desc>" + escape(description) + "</desc>";
        svg = svg.replaceFirst(">", " role=\"img\">" + Matcher.quoteReplacement(told));
        boolean page = use != Use.FILE;
        svg = ink(svg, ChartInks.PLACEHOLDERS.ink(), page ? "currentColor" : hex(ChartInks.PAPER.ink()));
        svg = ink(svg, ChartInks.PLACEHOLDERS.faint(), page ? "var(--rule)" : hex(ChartInks.PAPER.faint()));
        svg = ink(svg, ChartInks.PLACEHOLDERS.ground(), page ? "var(--sheet)" : hex(ChartInks.PAPER.ground()));
        for (int i = 0; i < SERIES_ON_PAGE.length; i++) {
            svg = ink(svg, ChartInks.PLACEHOLDERS.series(i), page ? SERIES_ON_PAGE[i] : hex(ChartInks.PAPER.series(i)));
        }
        return page ? unstyled(svg) : svg;
    }

    /** Style attributes as presentation attributes: the pages' content security policy ignores the former. */
    private static String unstyled(String svg) {
        return STYLE.matcher(svg)
                .replaceAll(style ->
                        Matcher.quoteReplacement(Stream.of(style.group(2).split(";"))
                                .map(declaration -> declaration.split(":", 2))
                                .filter(pair -> pair.length == 2)
                                .map(pair -> pair[0].strip() + "=" + style.group(1) + pair[1].strip() + style.group(1))
                                .collect(Collectors.joining(" "))));
    }

    private static String ink(String svg, Color placeholder, String color) {
        return svg.replace(
                "rgb(" + placeholder.getRed() + "," + placeholder.getGreen() + "," + placeholder.getBlue() + ")",
                color);
    }

    private static String hex(Color color) {
        return String.format("#%06x", color.getRGB() & 0xffffff);
    }

    private static String escape(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;");
    }
}
