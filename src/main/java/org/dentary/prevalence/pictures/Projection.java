package org.dentary.prevalence.pictures;

import java.awt.geom.Point2D;
import java.util.List;

/**
 * The equirectangular projection with its standard parallel through the middle of what is shown: x = R (longitude -
 * longitude0) cos(latitude1), y = R (latitude - latitude0) (Snyder 1987, Map Projections, USGS Professional Paper 1395, p.
 * 90), scaled to a width. North is up. Good for a state; not across the 180th meridian.
 *
 * @param west lowest longitude
 * @param north highest latitude
 * @param parallel cosine of the standard parallel
 * @param scale pixels a degree of latitude
 * @param left pixels left of it
 * @param top pixels above it
 */
record Projection(double west, double north, double parallel, double scale, double left, double top) {

    /** What a projection fits into. */
    record Fitted(Projection projection, int height) {}

    /**
     * Fits outlines, at least one, into a width; the height follows, up to {@code highest}.
     *
     * @param margin pixels on every side
     */
    static Fitted fit(List<Outline> outlines, int width, int highest, int margin) {
        double west = Double.POSITIVE_INFINITY;
        double east = Double.NEGATIVE_INFINITY;
        double south = Double.POSITIVE_INFINITY;
        double north = Double.NEGATIVE_INFINITY;
        for (Outline outline : outlines) {
            for (List<Point2D.Double> ring : outline.rings()) {
                for (Point2D.Double p : ring) {
                    west = Math.min(west, p.x);
                    east = Math.max(east, p.x);
                    south = Math.min(south, p.y);
                    north = Math.max(north, p.y);
                }
            }
        }
        double parallel = Math.max(0.01, Math.cos(Math.toRadians((south + north) / 2)));
        double across = Math.max(1e-6, (east - west) * parallel);
        double down = Math.max(1e-6, north - south);
        double scale = Math.min((width - 2.0 * margin) / across, (highest - 2.0 * margin) / down);
        double left = (width - across * scale) / 2;
        return new Fitted(
                new Projection(west, north, parallel, scale, left, margin), (int) Math.ceil(down * scale) + 2 * margin);
    }

    /** Longitude and latitude in degrees to pixels. */
    Point2D.Double of(Point2D.Double position) {
        return new Point2D.Double(left + (position.x - west) * parallel * scale, top + (north - position.y) * scale);
    }
}
