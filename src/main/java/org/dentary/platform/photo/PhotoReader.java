package org.dentary.platform.photo;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.concurrent.atomic.AtomicBoolean;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.dentary.platform.problem.InvalidInput;

/**
 * Makes of a file that somebody sent two pictures of our own: turned upright, no larger than needed, and with no byte of the
 * file in them, so that neither place, time nor device survives. A file's size in pixels is read before any pixel is.
 */
public final class PhotoReader {
    /** Most bytes taken. */
    public static final int MOST_BYTES = 15 * 1024 * 1024;

    /** Most pixels of the file sent; a phone's largest photos have about 50 million. */
    public static final long MOST_PIXELS = 52_000_000;

    /** Fewest pixels on either side; less shows nothing that counts. */
    public static final int LEAST_SIDE = 240;

    public static final int LARGE = 2560;
    static final int SMALL = 400;

    public static final String JPEG = "image/jpeg";
    public static final String PNG = "image/png";

    private static final String FIELD = "photo";
    private static final float QUALITY = 0.85f;
    private static final byte[] JPEG_HEAD = {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF};
    private static final byte[] PNG_HEAD = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};

    private PhotoReader() {}

    /**
     * A photograph as kept.
     *
     * @param sent SHA-256 of the file sent, hex
     * @param digest SHA-256 of width, height and pixels of the large picture, hex
     */
    public record Photo(byte[] large, byte[] small, int width, int height, String sent, String digest) {}

    /**
     * Reads a file.
     *
     * @param declared media type that the sender gave it; null when none was
     * @throws InvalidInput if it is not a whole JPEG or PNG photograph within the limits
     */
    public static Photo read(byte[] file, String declared) {
        if (file.length == 0) {
            throw refused("REQUIRED", "Choose a photo, JPEG or PNG");
        }
        if (file.length > MOST_BYTES) {
            throw refused(
                    "PHOTO_TOO_LARGE",
                    "The file is larger than 15 MB; take the photo at a lower resolution, or save it smaller");
        }
        String type = startsWith(file, JPEG_HEAD) ? JPEG : startsWith(file, PNG_HEAD) ? PNG : null;
        if (type == null) {
            throw refused("NOT_A_PHOTO", "The file is neither JPEG nor PNG; save the photo as one of them");
        }
        if (declared != null && !declared.equals(type)) {
            throw refused(
                    "OTHER_TYPE", "The file is sent as " + declared + " but is " + type + "; send it as what it is");
        }
        BufferedImage large = scaled(turned(decoded(file, type), type.equals(JPEG) ? Upright.of(file) : 1), LARGE);
        return new Photo(
                jpeg(large),
                jpeg(scaled(large, SMALL)),
                large.getWidth(),
                large.getHeight(),
                sha256(file),
                sha256(pixels(large)));
    }

    private static BufferedImage decoded(byte[] file, String type) {
        ImageReader reader = ImageIO.getImageReadersByMIMEType(type).next();
        try (ImageInputStream in = new MemoryCacheImageInputStream(new ByteArrayInputStream(file))) {
            reader.setInput(in, true, true);
            int width = reader.getWidth(0);
            int height = reader.getHeight(0);
            requireSize(width, height);
            AtomicBoolean cutShort = new AtomicBoolean();
            reader.addIIOReadWarningListener((from, warning) -> {
                if (warning.contains("EOI")) { // the end-of-image marker: without it the file was cut short
                    cutShort.set(true);
                }
            });
            // Pixels that would be thrown away are not even unpacked.
            int step = Math.max(1, Math.max(width, height) / LARGE);
            ImageReadParam some = reader.getDefaultReadParam();
            some.setSourceSubsampling(step, step, 0, 0);
            BufferedImage image = reader.read(0, some);
            if (cutShort.get()) {
                throw broken();
            }
            return image;
        } catch (IOException | IllegalArgumentException | IndexOutOfBoundsException | NegativeArraySizeException e) {
            throw broken();
        } finally {
            reader.dispose();
        }
    }

    private static void requireSize(int width, int height) {
        if ((long) width * height > MOST_PIXELS) {
            throw refused(
                    "PHOTO_TOO_LARGE",
                    "The photo has " + width + " by " + height
                            + " pixels; at most 52 million are taken, such as 8,000 by"
                            + " 6,500. Take it at a lower resolution");
        }
        if (Math.min(width, height) < LEAST_SIDE) {
            throw refused(
                    "PHOTO_TOO_SMALL",
                    "The photo has " + width + " by " + height + " pixels; what it shows needs at least " + LEAST_SIDE
                            + " on each side");
        }
    }

    /** The picture as it was held, in plain red, green and blue on white. */
    private static BufferedImage turned(BufferedImage image, int orientation) {
        int width = image.getWidth();
        int height = image.getHeight();
        boolean onItsSide = orientation >= 5;
        BufferedImage upright = blank(onItsSide ? height : width, onItsSide ? width : height);
        draw(upright, image, Upright.transform(orientation, width, height));
        return upright;
    }

    private static BufferedImage scaled(BufferedImage image, int longest) {
        double scale = (double) longest / Math.max(image.getWidth(), image.getHeight());
        if (scale >= 1) {
            return image;
        }
        // Halving first keeps fine lines, such as dentine, from being skipped over.
        BufferedImage from = scale < 0.5 ? scaled(image, longest * 2) : image;
        int width = Math.max(1, (int) Math.round(image.getWidth() * scale));
        int height = Math.max(1, (int) Math.round(image.getHeight() * scale));
        BufferedImage smaller = blank(width, height);
        draw(
                smaller,
                from,
                AffineTransform.getScaleInstance((double) width / from.getWidth(), (double) height / from.getHeight()));
        return smaller;
    }

    private static BufferedImage blank(int width, int height) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setColor(java.awt.Color.WHITE);
        graphics.fillRect(0, 0, width, height);
        graphics.dispose();
        return image;
    }

    private static void draw(BufferedImage on, BufferedImage image, AffineTransform as) {
        Graphics2D graphics = on.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        graphics.drawImage(image, as, null);
        graphics.dispose();
    }

    private static byte[] jpeg(BufferedImage image) {
        ImageWriter writer = ImageIO.getImageWritersByMIMEType(JPEG).next();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream stream = new MemoryCacheImageOutputStream(out)) {
            ImageWriteParam how = writer.getDefaultWriteParam();
            how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            how.setCompressionQuality(QUALITY);
            writer.setOutput(stream);
            writer.write(null, new IIOImage(image, null, null), how);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            writer.dispose();
        }
        return out.toByteArray();
    }

    private static byte[] pixels(BufferedImage image) {
        int[] colors = image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
        ByteBuffer bytes = ByteBuffer.allocate(8 + 4 * colors.length);
        bytes.putInt(image.getWidth()).putInt(image.getHeight());
        Arrays.stream(colors).forEach(bytes::putInt);
        return bytes.array();
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("SHA-256 is required of every Java platform", e);
        }
    }

    private static boolean startsWith(byte[] file, byte[] head) {
        return file.length >= head.length && Arrays.equals(file, 0, head.length, head, 0, head.length);
    }

    private static InvalidInput broken() {
        return refused(
                "NOT_A_PHOTO",
                "The photo cannot be read to its end; take it again, or save it anew as an ordinary JPEG");
    }

    private static InvalidInput refused(String rule, String message) {
        return InvalidInput.field(FIELD, rule, message);
    }
}
