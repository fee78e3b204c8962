package org.dentary.platform.photo;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;

/** Files as phones and mischief make them. */
public final class PhotoFixture {
    public static final String DEVICE = "Invented Phone 9";

    private PhotoFixture() {}

    /** A picture that no other call makes: gray noise in blocks, its upper left quarter red. */
    public static BufferedImage picture(int width, int height) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        Random random = new Random();
        int block = Math.max(20, width / 40);
        for (int x = 0; x < width; x += block) {
            for (int y = 0; y < height; y += block) {
                int gray = 60 + random.nextInt(120);
                graphics.setColor(new Color(gray, gray, gray));
                graphics.fillRect(x, y, block, block);
            }
        }
        graphics.setColor(Color.RED);
        graphics.fillRect(0, 0, width / 2, height / 2);
        graphics.dispose();
        return image;
    }

    public static byte[] file(BufferedImage image, String format) {
        try (ByteArrayOutputStream out = new ByteArrayOutputStream()) {
            ImageIO.write(image, format, out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static byte[] jpeg(int width, int height) {
        return file(picture(width, height), "jpeg");
    }

    public static byte[] png(int width, int height) {
        return file(picture(width, height), "png");
    }

    /**
     * The same with an Exif segment as a phone writes it: maker, orientation, and a GPS directory with a latitude of 45° 30'
     * N. Laid out by hand after Exif 2.3 (CIPA DC-008), sections 4.5 and 4.6.
     */
    public static byte[] withExif(byte[] jpeg, int orientation) {
        byte[] maker = (DEVICE + "\0").getBytes(StandardCharsets.US_ASCII);
        ByteBuffer tiff = ByteBuffer.allocate(8 + 2 + 3 * 12 + 4 + maker.length + 2 + 2 * 12 + 4 + 24);
        int makerAt = 8 + 2 + 3 * 12 + 4;
        int gpsAt = makerAt + maker.length;
        int latitudeAt = gpsAt + 2 + 2 * 12 + 4;
        tiff.put((byte) 'M').put((byte) 'M').putShort((short) 42).putInt(8);
        tiff.putShort((short) 3);
        entry(tiff, 0x010F, 2, maker.length, makerAt);
        tiff.putShort((short) 0x0112)
                .putShort((short) 3)
                .putInt(1)
                .putShort((short) orientation)
                .putShort((short) 0);
        entry(tiff, 0x8825, 4, 1, gpsAt);
        tiff.putInt(0).put(maker);
        tiff.putShort((short) 2);
        tiff.putShort((short) 1).putShort((short) 2).putInt(2).put(new byte[] {'N', 0, 0, 0});
        entry(tiff, 2, 5, 3, latitudeAt);
        tiff.putInt(0);
        tiff.putInt(45).putInt(1).putInt(30).putInt(1).putInt(0).putInt(1);
        byte[] body = tiff.array();
        ByteBuffer file = ByteBuffer.allocate(jpeg.length + 4 + 6 + body.length);
        file.put(jpeg, 0, 2)
                .putShort((short) 0xFFE1)
                .putShort((short) (2 + 6 + body.length))
                .put("Exif\0\0".getBytes(StandardCharsets.US_ASCII))
                .put(body)
                .put(jpeg, 2, jpeg.length - 2);
        return file.array();
    }

    private static void entry(ByteBuffer tiff, int tag, int type, int count, int value) {
        tiff.putShort((short) tag).putShort((short) type).putInt(count).putInt(value);
    }

    /** A small PNG file that says it holds that many pixels (PNG specification, section 11.2.2, IHDR). */
    public static byte[] pngThatClaims(int width, int height) {
        byte[] png = png(300, 300);
        ByteBuffer.wrap(png).putInt(16, width).putInt(20, height);
        CRC32 crc = new CRC32();
        crc.update(png, 12, 17);
        ByteBuffer.wrap(png).putInt(29, (int) crc.getValue());
        return png;
    }

    /** The segments' markers of a JPEG up to its scan (ITU-T T.81, annex B), in order. */
    public static String markers(byte[] jpeg) {
        StringBuilder markers = new StringBuilder();
        int at = 2;
        while ((jpeg[at + 1] & 0xFF) != 0xDA) {
            markers.append(String.format("%02X ", jpeg[at + 1] & 0xFF));
            at += 2 + (((jpeg[at + 2] & 0xFF) << 8) | (jpeg[at + 3] & 0xFF));
        }
        return markers.toString();
    }

    public static boolean contains(byte[] file, String text) {
        return new String(file, StandardCharsets.ISO_8859_1).contains(text);
    }
}
