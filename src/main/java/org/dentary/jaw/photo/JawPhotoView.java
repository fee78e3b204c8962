package org.dentary.jaw.photo;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;

/**
 * A photograph of a jaw, without its pixels.
 *
 * @param reading id of the reading it goes with, or null
 * @param width pixels as kept
 * @param height pixels as kept
 * @param bytes size of the picture as kept
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record JawPhotoView(
        String id, String kit, String reading, int width, int height, int bytes, String addedBy, Instant addedAt) {
    /** Where the picture is. */
    public String getHref() {
        return "/api/v1/animals/" + kit + "/jaw-photos/" + id;
    }
}
