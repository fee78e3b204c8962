package org.dentary.kit;

import com.fasterxml.jackson.annotation.JsonIgnore;
import org.dentary.codes.Part;

/**
 * A label as it is known today.
 *
 * @param code ten characters
 * @param part name of the {@link org.dentary.codes.Part} it was printed for
 * @param kitPrinted the kit whose characters it carries
 * @param kitBound the kit it belongs to now; differs after a re-attribution, and is the one to go by
 * @param block id of the block it was issued in
 * @param season season the block was issued for; says where labels went, not when the animal died
 * @param station station the block was issued to
 * @param voided whether it must not be used
 */
public record LabelView(
        String code,
        String part,
        String kitPrinted,
        String kitBound,
        String block,
        String season,
        String station,
        boolean voided) {
    /** The part in plain words. */
    @JsonIgnore
    public String partWords() {
        return Part.valueOf(part).label();
    }
}
