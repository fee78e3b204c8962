package org.dentary.kit;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.dentary.codes.Part;

/**
 * A block with everything in it.
 *
 * @param kits codes of the kits in the order they were drawn
 * @param labels by kit in that order, within a kit in printing order
 */
public record IssuedBlock(
        UUID id,
        String season,
        String station,
        String person,
        List<Part> parts,
        int copies,
        String issuedBy,
        Instant issuedAt,
        List<String> kits,
        List<LabelOfKit> labels) {
    static IssuedBlock of(BlockView block, List<LabelOfKit> labels) {
        return new IssuedBlock(
                block.id(),
                block.season(),
                block.station(),
                block.person(),
                block.parts(),
                block.copies(),
                block.issuedBy(),
                block.issuedAt(),
                labels.stream().map(LabelOfKit::kit).distinct().toList(),
                labels);
    }
}
