package org.dentary.portal.code;

import com.fasterxml.jackson.annotation.JsonIgnore;
import org.dentary.codes.LabelCode;
import org.dentary.codes.Part;

/**
 * All that is known of a label.
 *
 * @param code ten characters
 * @param kit the kit it was printed for
 * @param part name of the part it was printed for
 * @param block block it was issued in
 * @param season season the block was issued for
 * @param station station the block was issued to
 * @param boundTo kit of the animal it belongs to, or null while neither animal nor specimen of its kit is recorded
 * @param place where it is by the last custody event, or null where custody knows nothing
 * @param box whether a box was opened under it
 * @param specimen whether a specimen was recorded under it
 * @param voided whether it must not be used
 * @param voidReason why, or null
 * @param reported LOST or RETURNED where its kit was said to be, whether it was used since or not; else null
 * @param prints how often it was printed, 1 where it was never printed again
 * @param version how often the label was changed
 */
public record CodeView(
        String code,
        String kit,
        String part,
        String block,
        String season,
        String station,
        String boundTo,
        String place,
        Boolean box,
        Boolean specimen,
        Boolean voided,
        String voidReason,
        String reported,
        Long prints,
        @JsonIgnore Integer version) {
    /** As printed, 4-4-2. */
    @JsonIgnore
    public String grouped() {
        return LabelCode.parse(code).grouped();
    }

    /** Whether it is for a box, which no animal belongs to. */
    @JsonIgnore
    public boolean isBoxLabel() {
        return Part.BOX.name().equals(part);
    }

    /** The part in plain words. */
    @JsonIgnore
    public String partWords() {
        return Part.valueOf(part).label();
    }
}
