package org.dentary.jaw.drawing;

import java.awt.Graphics2D;
import java.util.function.Consumer;

/**
 * One drawing, for screen and print alike.
 *
 * @param name its name in addresses, such as {@code third-two-cusps}
 * @param title what it shows, in a few words
 * @param description what is to be seen in it, for those who cannot see it
 * @param width in drawing units
 * @param height in drawing units
 */
public record JawDrawing(
        String name, String title, String description, int width, int height, Consumer<Graphics2D> painter) {

    /** Draws it in black lines, its top left corner at the origin, one drawing unit to one unit of the graphics. */
    public void paint(Graphics2D graphics) {
        painter.accept(graphics);
    }
}
