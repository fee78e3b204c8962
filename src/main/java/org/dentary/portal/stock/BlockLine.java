package org.dentary.portal.stock;

import org.dentary.kit.BlockView;

/**
 * A block with its tally, as a line of the list.
 *
 * @param issuedOn day of issue in the station's zone
 */
public record BlockLine(BlockView block, BlockTally tally, String issuedOn) {}
