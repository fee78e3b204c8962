package org.dentary.portal.stock;

import java.util.UUID;

/**
 * How the kits of a block add up today: {@code used + voided + lost + returned + left = kits}.
 *
 * @param prints how often its labels were printed
 * @param kits kits issued
 * @param used kits with an animal, a specimen or a box under one of their labels
 * @param voided kits not used, all labels voided
 * @param lost kits not used and reported lost
 * @param returned kits not used and handed back
 * @param left kits that should still be at the station
 * @param usedElsewhere of those used, how many for an animal taken in at another station
 * @param usedInAnotherSeason of those used, how many for an animal of another season
 * @param voidLabels single labels voided, in kits used or not
 */
public record BlockTally(
        UUID block,
        String season,
        String station,
        Long prints,
        Long kits,
        Long used,
        Long voided,
        Long lost,
        Long returned,
        Long left,
        Long usedElsewhere,
        Long usedInAnotherSeason,
        Long voidLabels) {}
