package org.dentary.kit;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.dentary.codes.Part;

/** A block as stored; parts separated by blanks, in printing order. */
record BlockRow(
        UUID id,
        String season,
        String seasonName,
        String station,
        String stationName,
        String person,
        String parts,
        Integer kits,
        Integer copies,
        String issuedBy,
        Instant issuedAt,
        Integer version) {
    BlockView view() {
        List<Part> list = Stream.of(parts.split(" ")).map(Part::valueOf).toList();
        return new BlockView(
                id, season, seasonName, station, stationName, person, list, kits, copies, issuedBy, issuedAt, version);
    }
}
