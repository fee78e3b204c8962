package org.dentary.prevalence.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.function.Consumer;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.ImageOutputStream;

/** A drawing made with {@link ChartInks#PAPER} as PNG: black on white at twice its size. */
public final class ChartPng {
    private static final int SCALE = 2;
    private static final String FORMAT = "javax_imageio_png_1.0";

    private ChartPng() {}

    /**
     * @param width units across, half as many as pixels
     * @param height units down
     * @param draw draws with its top left corner at the canvas's origin
     * @param title what it shows; kept in the file with the description as its text chunks "Title" and "Description"
     *     (PNG, third edition, 11.3.3), since a picture goes on without its page
     * @param description its figures in words
     */
    public static byte[] of(int width, int height, Consumer<Graphics2D> draw, String title, String description) {
        BufferedImage image = new BufferedImage(width * SCALE, height * SCALE, BufferedImage.TYPE_INT_RGB);
        Graphics2D canvas = image.createGraphics();
        canvas.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        canvas.setColor(Color.WHITE);
        canvas.fill(new Rectangle2D.Double(0, 0, image.getWidth(), image.getHeight()));
        canvas.scale(SCALE, SCALE);
        draw.accept(canvas);
        canvas.dispose();
        return written(image, Map.of("Title", title, "Description", description));
    }

    private static byte[] written(BufferedImage image, Map<String, String> texts) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
        try (ImageOutputStream stream = ImageIO.createImageOutputStream(out)) {
            IIOMetadata about = writer.getDefaultImageMetadata(new ImageTypeSpecifier(image), null);
            IIOMetadataNode root = new IIOMetadataNode(FORMAT);
            IIOMetadataNode international = new IIOMetadataNode("iTXt");
            texts.forEach((keyword, text) -> international.appendChild(entry(keyword, text)));
            root.appendChild(international);
            about.mergeTree(FORMAT, root);
            writer.setOutput(stream);
            writer.write(new IIOImage(image, null, about));
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        } finally {
            writer.dispose();
        }
        return out.toByteArray();
    }

    private static IIOMetadataNode entry(String keyword, String text) {
        IIOMetadataNode entry = new IIOMetadataNode("iTXtEntry");
        entry.setAttribute("keyword", keyword);
        entry.setAttribute("compressionFlag", "FALSE");
        entry.setAttribute("compressionMethod", "0");
        entry.setAttribute("languageTag", "en-US");
        entry.setAttribute("translatedKeyword", "");
        entry.setAttribute("text", text);
        return entry;
    }
}
