package org.dentary.jaw.drawing;

import java.util.Arrays;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jfree.svg.SVGGraphics2D;

/**
 * The drawings as SVG text. Lines take the color of the text around them ({@code currentColor}); a file shown by itself follows
 * the reader's light or dark preference.
 */
public final class JawDrawingSvg {

    private static final Pattern STYLE = Pattern.compile("style='([^']*)'");
    private static final String OWN_COLOR =
            "<style>svg{color:#111}@media (prefers-color-scheme:dark){svg{color:#eee}}</style>";
    private static final String SHEET = JawDrawings.all().stream()
            .map(JawDrawingSvg::symbol)
            .collect(Collectors.joining("", "<svg xmlns=\"http://www.w3.org/2000/svg\">", "</svg>"));

    private JawDrawingSvg() {}

    /** One drawing as a file of its own, with its title and description. */
    public static String file(JawDrawing drawing) {
        return "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" color=\"#111\" viewBox=\"0 0 " + drawing.width()
                + " "
                + drawing.height() + "\" width=\"" + drawing.width() + "\" height=\"" + drawing.height() + "\">"
                + words(drawing) + OWN_COLOR + lines(drawing) + "</svg>";
    }

    /** All drawings as symbols of one file, to be shown by {@code <use href="...#name">} in the color of the page's text. */
    public static String sheet() {
        return SHEET;
    }

    private static String symbol(JawDrawing drawing) {
        return "<symbol id=\"" + drawing.name() + "\" viewBox=\"0 0 " + drawing.width() + " " + drawing.height() + "\">"
                + words(drawing) + lines(drawing) + "</symbol>";
    }

    private static String words(JawDrawing drawing) {
        return "<title>" + drawing.title() + "</title><desc>" + drawing.description() + "</desc>";
    }

    private static String lines(JawDrawing drawing) {
        SVGGraphics2D graphics = new SVGGraphics2D(drawing.width(), drawing.height());
        graphics.setGeomDoubleConverter(JawDrawingSvg::tenth);
        drawing.paint(graphics);
        String element = graphics.getSVGElement(null, false, null, null, null);
        String inner = element.substring(element.indexOf('>') + 1, element.lastIndexOf("</svg>"));
        return STYLE.matcher(inner.replace("rgb(0,0,0)", "currentColor"))
                .replaceAll(style -> attributes(style.group(1)));
    }

    /** Attributes instead of a style, which a page's content policy would not let through. */
    private static String attributes(String style) {
        return Arrays.stream(style.split(";"))
                .map(pair -> pair.split(":"))
                .filter(pair -> !pair[0].endsWith("-opacity") && !pair[0].endsWith("miterlimit"))
                .map(pair -> pair[0] + "=\""
                        + (pair[0].equals("stroke-width") ? tenth(Double.parseDouble(pair[1])) : pair[1]) + "\"")
                .collect(Collectors.joining(" "));
    }

    private static String tenth(double length) {
        double rounded = Math.round(length * 10) / 10.0;
        return rounded == Math.rint(rounded) ? String.valueOf((long) rounded) : String.valueOf(rounded);
    }

    /** Names under which {@link #sheet} holds its symbols. */
    public static Set<String> names() {
        return JawDrawings.all().stream().map(JawDrawing::name).collect(Collectors.toSet());
    }
}
