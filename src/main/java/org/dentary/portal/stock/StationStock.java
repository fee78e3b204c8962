package org.dentary.portal.stock;

/**
 * How the kits of a station add up in a season.
 *
 * @param printedKits kits of blocks that were printed at least once
 * @param low whether fewer are left than the plan's {@code LOW_KIT_STOCK}
 */
public record StationStock(
        String station,
        String stationName,
        String season,
        long kits,
        long printedKits,
        long used,
        long voided,
        long lost,
        long returned,
        long left,
        long usedElsewhere,
        long usedInAnotherSeason,
        boolean low) {}
