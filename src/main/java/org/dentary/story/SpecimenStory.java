package org.dentary.story;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.List;
import org.dentary.specimen.PreservationView;

/**
 * A specimen and where it is now.
 *
 * @param part what its label was printed for
 * @param kitPrinted the kit its label was printed for, where a swap was put right; else null
 * @param parent the specimen it was cut from, or null
 * @param custodianKind {@code PERSON}, {@code PARTY} or {@code STORE}
 * @param custodian who has it; {@code LABORATORY} where which one would tell more than the reader may know
 * @param preserved how it has been kept, oldest first
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record SpecimenStory(
        String code,
        String part,
        String kitPrinted,
        String parent,
        String tissue,
        String tissueText,
        String side,
        String condition,
        String preservation,
        Instant collectedAt,
        String collectedBy,
        boolean archived,
        String custodianKind,
        String custodian,
        String place,
        String box,
        Boolean offered,
        List<PreservationView> preserved,
        int version) {}
