package org.dentary.platform.photo;

import java.awt.geom.AffineTransform;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * How a photo must be turned to stand upright, from the one Exif tag that says so; the tag itself goes the way of all others.
 *
 * <p>Source: Exif 2.3 (CIPA DC-008), tag 0x0112, values 1 to 8 after TIFF 6.0.
 */
final class Upright {
    private static final int START_OF_SCAN = 0xDA;
    private static final int APP1 = 0xE1;
    private static final int TAG = 0x0112;
    private static final byte[] EXIF = "Exif\0\0".getBytes(StandardCharsets.US_ASCII);

    private Upright() {}

    /** The orientation in [1, 8]; 1, upright, where the file says none or nothing that can be read. */
    static int of(byte[] jpeg) {
        int at = 2;
        while (at + 4 <= jpeg.length && (jpeg[at] & 0xFF) == 0xFF && (jpeg[at + 1] & 0xFF) != START_OF_SCAN) {
            int length = ((jpeg[at + 2] & 0xFF) << 8) | (jpeg[at + 3] & 0xFF);
            if (length < 2 || at + 2 + length > jpeg.length) {
                return 1;
            }
            if ((jpeg[at + 1] & 0xFF) == APP1 && isExif(jpeg, at + 4, length - 2)) {
                return inExif(ByteBuffer.wrap(jpeg, at + 4 + EXIF.length, length - 2 - EXIF.length)
                        .slice());
            }
            at += 2 + length;
        }
        return 1;
    }

    private static boolean isExif(byte[] jpeg, int at, int length) {
        return length > EXIF.length && java.util.Arrays.equals(jpeg, at, at + EXIF.length, EXIF, 0, EXIF.length);
    }

    private static int inExif(ByteBuffer tiff) {
        if (tiff.limit() < 8) {
            return 1;
        }
        tiff.order(tiff.get(0) == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
        long directory = tiff.getInt(4) & 0xFFFFFFFFL;
        if (directory + 2 > tiff.limit()) {
            return 1;
        }
        int entries = tiff.getShort((int) directory) & 0xFFFF;
        for (int i = 0; i < entries; i++) {
            long entry = directory + 2 + 12L * i;
            if (entry + 12 > tiff.limit()) {
                return 1;
            }
            if ((tiff.getShort((int) entry) & 0xFFFF) == TAG) {
                int value = tiff.getShort((int) entry + 8) & 0xFFFF;
                return value >= 1 && value <= 8 ? value : 1;
            }
        }
        return 1;
    }

    /**
     * What turns a picture of that orientation upright.
     *
     * @param width of the picture as it lies in the file
     * @param height of the picture as it lies in the file
     */
    static AffineTransform transform(int orientation, int width, int height) {
        return switch (orientation) {
            case 2 -> new AffineTransform(-1, 0, 0, 1, width, 0);
            case 3 -> new AffineTransform(-1, 0, 0, -1, width, height);
            case 4 -> new AffineTransform(1, 0, 0, -1, 0, height);
            case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
            case 6 -> new AffineTransform(0, 1, -1, 0, height, 0);
            case 7 -> new AffineTransform(0, -1, -1, 0, height, width);
            case 8 -> new AffineTransform(0, -1, 1, 0, 0, width);
            default -> new AffineTransform();
        };
    }
}
