package org.dentary.custody.evidence;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.time.Instant;
import java.util.UUID;

/**
 * A photograph as evidence, without its pixels.
 *
 * @param sha256 digest of salt and picture as they stand in the event: 64 lower-case hexadecimal digits
 * @param salt the 32 bytes before the picture, hexadecimal; null once the picture was erased
 * @param width pixels as kept
 * @param height pixels as kept
 * @param bytes size of the picture as kept
 * @param addedByName who added it, by name
 * @param href where the picture is, or null while no event shows it
 * @param erasure who erased the picture, or null while it is kept
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record EvidenceView(
        UUID id,
        String sha256,
        String salt,
        int width,
        int height,
        int bytes,
        String addedBy,
        String addedByName,
        Instant addedAt,
        String href,
        Erasure erasure) {

    /** That a picture was erased. */
    public record Erasure(String by, String byName, Instant at, String reason) {}

    /** The same as evidence of an event of that code. */
    EvidenceView of(String code) {
        return new EvidenceView(
                id,
                sha256,
                salt,
                width,
                height,
                bytes,
                addedBy,
                addedByName,
                addedAt,
                "/api/v1/specimens/" + code + "/custody/evidence/" + id,
                erasure);
    }

    /** Whether the picture was erased: its digest stays in the event, and vouches for nothing that can be shown. */
    @JsonProperty("erased")
    public boolean isErased() {
        return salt == null;
    }
}
