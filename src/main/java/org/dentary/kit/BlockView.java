package org.dentary.kit;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.codes.Part;

/**
 * A block of kits that was issued.
 *
 * @param person roster code of who answers for it, or null
 * @param parts the labels of each kit, in printing order
 * @param kits how many kits
 * @param copies identical labels of each
 */
public record BlockView(
        UUID id,
        String season,
        String seasonName,
        String station,
        String stationName,
        String person,
        List<Part> parts,
        int kits,
        int copies,
        String issuedBy,
        Instant issuedAt,
        int version) {
    /** How many labels a printing makes. */
    public int labels() {
        return kits * parts.size() * copies;
    }

    /** The parts in plain words, separated by commas. */
    public String partWords() {
        return parts.stream().map(Part::label).collect(Collectors.joining(", "));
    }
}
