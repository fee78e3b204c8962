package org.dentary.platform.photo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import javax.imageio.ImageIO;
import org.dentary.platform.problem.InvalidInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PhotoReaderTest {
    @Test
    void noMetadataSurvivesNeitherPlaceNorDevice() {
        byte[] sent = PhotoFixture.withExif(PhotoFixture.jpeg(800, 600), 1);
        assertTrue(PhotoFixture.contains(sent, "Exif") && PhotoFixture.contains(sent, PhotoFixture.DEVICE));
        PhotoReader.Photo photo = PhotoReader.read(sent, PhotoReader.JPEG);
        for (byte[] kept : new byte[][] {photo.large(), photo.small()}) {
            assertFalse(PhotoFixture.contains(kept, "Exif"));
            assertFalse(PhotoFixture.contains(kept, PhotoFixture.DEVICE));
            // JFIF's own segment, tables and frame: no APP1 and further, no comment.
            assertTrue(PhotoFixture.markers(kept).matches("(E0 |DB |C0 |C4 |DD )+"), PhotoFixture.markers(kept));
        }
    }

    /** Where the red quarter of the picture as it lies must stand after turning: Exif 2.3, table of tag 0x0112. */
    @ParameterizedTest
    @CsvSource({"1,0,0", "2,1,0", "3,1,1", "4,0,1", "5,0,0", "6,1,0", "7,1,1", "8,0,1"})
    void standsUprightAsTheCameraWasHeld(int orientation, int right, int low) throws IOException {
        byte[] sent = PhotoFixture.withExif(PhotoFixture.jpeg(640, 480), orientation);
        BufferedImage kept = image(PhotoReader.read(sent, null).large());
        assertEquals(orientation >= 5 ? 480 : 640, kept.getWidth());
        assertEquals(orientation >= 5 ? 640 : 480, kept.getHeight());
        int color = kept.getRGB(
                kept.getWidth() / 4 + right * kept.getWidth() / 2, kept.getHeight() / 4 + low * kept.getHeight() / 2);
        assertTrue((color >> 16 & 0xFF) > 200 && (color & 0xFF) < 60, Integer.toHexString(color));
    }

    @Test
    void aLargePhotoIsMadeSmallerAndKeepsItsShape() throws IOException {
        PhotoReader.Photo photo = PhotoReader.read(PhotoFixture.jpeg(6000, 4000), PhotoReader.JPEG);
        assertEquals(2560, photo.width());
        assertEquals(1707, photo.height());
        assertEquals(2560, image(photo.large()).getWidth());
        assertEquals(400, image(photo.small()).getWidth());
        assertTrue(photo.large().length < 2_000_000, photo.large().length + " bytes");
    }

    @Test
    void onePhotoIsKnownAgainAndAnotherIsNot() {
        byte[] one = PhotoFixture.jpeg(500, 400);
        String digest = PhotoReader.read(one, null).digest();
        assertEquals(
                digest, PhotoReader.read(PhotoFixture.withExif(one, 1), null).digest());
        assertNotEquals(
                digest, PhotoReader.read(PhotoFixture.jpeg(500, 400), null).digest());
    }

    @Test
    void aPngWithAGlassyGroundStandsOnWhite() throws IOException {
        BufferedImage glass = new BufferedImage(300, 300, BufferedImage.TYPE_INT_ARGB);
        BufferedImage kept = image(PhotoReader.read(PhotoFixture.file(glass, "png"), PhotoReader.PNG)
                .large());
        assertEquals(0xFFFFFFFF, kept.getRGB(150, 150));
    }

    @Test
    void whatClaimsTooManyPixelsIsRefusedBeforeAnyIsUnpacked() {
        assertEquals("PHOTO_TOO_LARGE", refusal(PhotoFixture.pngThatClaims(60_000, 60_000), null));
        byte[] jpeg = PhotoFixture.jpeg(300, 300);
        int frame = 0;
        while ((jpeg[frame] & 0xFF) != 0xFF || (jpeg[frame + 1] & 0xFF) != 0xC0) {
            frame++;
        }
        Arrays.fill(jpeg, frame + 5, frame + 9, (byte) 0xFE);
        assertEquals("PHOTO_TOO_LARGE", refusal(jpeg, null));
    }

    @Test
    void whatIsNoWholePhotoIsRefused() {
        byte[] jpeg = PhotoFixture.jpeg(900, 900);
        byte[] png = PhotoFixture.png(900, 900);
        assertEquals("REQUIRED", refusal(new byte[0], null));
        assertEquals("NOT_A_PHOTO", refusal("%PDF-1.7".getBytes(StandardCharsets.US_ASCII), null));
        assertEquals("NOT_A_PHOTO", refusal("<svg/>".getBytes(StandardCharsets.US_ASCII), PhotoReader.PNG));
        assertEquals("NOT_A_PHOTO", refusal(Arrays.copyOf(jpeg, jpeg.length / 2), null));
        assertEquals("NOT_A_PHOTO", refusal(Arrays.copyOf(png, png.length / 2), null));
        assertEquals("NOT_A_PHOTO", refusal(Arrays.copyOf(jpeg, 30), null));
        assertEquals("OTHER_TYPE", refusal(png, PhotoReader.JPEG));
        assertEquals("PHOTO_TOO_SMALL", refusal(PhotoFixture.jpeg(200, 900), null));
        assertEquals("PHOTO_TOO_LARGE", refusal(new byte[PhotoReader.MOST_BYTES + 1], null));
    }

    private static String refusal(byte[] file, String type) {
        return assertThrows(InvalidInput.class, () -> PhotoReader.read(file, type))
                .errors()
                .get(0)
                .rule();
    }

    private static BufferedImage image(byte[] file) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(file));
    }
}
