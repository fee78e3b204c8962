package org.dentary.jaw.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.dentary.jaw.key.KeyQuestion;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** The drawings: complete, described, and legible without color. */
class JawDrawingsTest {

    private static final Pattern COLOR = Pattern.compile("(?:stroke|fill)=\"([^\"]*)\"");

    @Test
    void hasADrawingForEveryAnswerOfTheKey() {
        for (KeyQuestion question : KeyQuestion.values()) {
            for (KeyQuestion.Answer answer : question.answers()) {
                assertTrue(JawDrawings.find(answer.drawing()).isPresent(), answer.drawing());
            }
        }
        Stream.of("jaw-side", "edge-sharp", "edge-rounded")
                .forEach(name -> assertTrue(JawDrawings.find(name).isPresent(), name));
    }

    @Test
    void saysInWordsWhatEachDrawingShows() throws Exception {
        for (JawDrawing drawing : JawDrawings.all()) {
            Element svg = parse(JawDrawingSvg.file(drawing)).getDocumentElement();
            assertEquals("img", svg.getAttribute("role"));
            assertEquals("title", svg.getFirstChild().getNodeName());
            assertEquals(drawing.title(), svg.getFirstChild().getTextContent());
            assertTrue(svg.getElementsByTagName("desc").item(0).getTextContent().length() > 40, drawing.name());
            assertTrue(svg.getElementsByTagName("path").getLength() >= 2, drawing.name());
        }
    }

    @Test
    void takesTheColorOfTheTextAroundItAndNeedsNoFontNorStyle() {
        for (JawDrawing drawing : JawDrawings.all()) {
            Matcher colors = COLOR.matcher(JawDrawingSvg.file(drawing));
            Set<String> found = new HashSet<>();
            while (colors.find()) {
                found.add(colors.group(1));
            }
            found.removeAll(List.of("currentColor", "none"));
            assertEquals(Set.of(), found, drawing.name());
            assertFalse(JawDrawingSvg.file(drawing).contains("<text"), drawing.name());
        }
        assertFalse(JawDrawingSvg.sheet().contains("style="));
    }

    @Test
    void holdsEveryDrawingInOneSheetByItsName() throws Exception {
        Document sheet = parse(JawDrawingSvg.sheet());
        Set<String> ids = new HashSet<>();
        for (int i = 0; i < sheet.getElementsByTagName("symbol").getLength(); i++) {
            ids.add(((Element) sheet.getElementsByTagName("symbol").item(i)).getAttribute("id"));
        }
        assertEquals(JawDrawingSvg.names(), ids);
        assertEquals(JawDrawings.all().size(), ids.size());
    }

    @Test
    void staysWithinItsFrameAndDiffersFromEveryOther() {
        Set<Long> seen = new HashSet<>();
        for (JawDrawing drawing : JawDrawings.all()) {
            int margin = 20;
            BufferedImage image = new BufferedImage(
                    drawing.width() + 2 * margin, drawing.height() + 2 * margin, BufferedImage.TYPE_INT_ARGB);
            Graphics2D graphics = image.createGraphics();
            graphics.translate(margin, margin);
            drawing.paint(graphics);
            graphics.dispose();
            long inside = 1;
            int outside = 0;
            for (int y = 0; y < image.getHeight(); y++) {
                for (int x = 0; x < image.getWidth(); x++) {
                    if (new Color(image.getRGB(x, y), true).getAlpha() > 0) {
                        boolean framed = x >= margin
                                && y >= margin
                                && x < margin + drawing.width()
                                && y < margin + drawing.height();
                        inside = framed ? inside * 31 + x * 7L + y : inside;
                        outside += framed ? 0 : 1;
                    }
                }
            }
            assertEquals(0, outside, drawing.name());
            assertTrue(seen.add(inside), drawing.name() + " looks like another");
        }
    }

    private static Document parse(String svg) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
    }
}
