package org.dentary.kit;

import java.time.Instant;
import java.util.UUID;

/**
 * One label printed again after its block was: the trail from the new print to the old.
 *
 * @param label the code, which the new print carries too
 * @param stock label stock it was printed on
 * @param reason why the old print no longer serves
 * @param printNumber 2 for the first print after the block's own
 */
public record ReprintView(
        UUID id, String label, String stock, String reason, String printedBy, Instant printedAt, Integer printNumber) {}
