package org.dentary.story;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.dentary.animal.AnimalDetails;
import org.dentary.animal.Identifier;
import org.dentary.animal.LinkView;
import org.dentary.custody.identity.IdentityExceptionView;
import org.dentary.jaw.DesignationView;
import org.dentary.jaw.JawReadingView;
import org.dentary.jaw.photo.JawPhotoView;
import org.dentary.specimen.ReAttributionView;

/**
 * The whole story of one kit's animal.
 *
 * @param keyClass end of the key of the reading that stands; null where none does
 * @param ageClass the age that stands; null where it is kept from a second reader until theirs is given
 * @param readingsHidden whether readings are kept from a second reader
 * @param jawPhotos photos of the jaw, which a second reader may see; only for those who may see photos
 * @param identityExceptions of its specimens, oldest first; they stay for ever
 * @param outcome the released outcome for the plan's first disease
 * @param warnings what the last write allowed and is worth a second look
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record AnimalStory(
        String kit,
        String keyClass,
        String ageClass,
        boolean ageDisputed,
        boolean readingsHidden,
        String outcome,
        String season,
        @JsonUnwrapped Facts facts,
        List<OutcomeOfDisease> outcomes,
        List<JawReadingView> jawReadings,
        List<JawPhotoView> jawPhotos,
        List<DesignationView> designatedAges,
        List<SpecimenStory> specimens,
        List<FindingRow> findings,
        List<ReAttributionView> reAttributions,
        List<IdentityExceptionView> identityExceptions,
        List<LinkView> links,
        String sameAs,
        List<String> duplicates,
        boolean notAttributable,
        KitIssue issued,
        List<Open> missing,
        List<Open> next,
        List<Happening> timeline,
        List<String> warnings,
        String recordedBy,
        Instant recordedAt,
        int version) {
    /** The deer facts under the names of the intake's body; {@code managementUnit} is a code or {@code UNKNOWN}. */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Facts(
            String species,
            String origin,
            String sex,
            String sexEvidence,
            LocalDate diedOn,
            String diedOnPrecision,
            String diedOnReason,
            String managementUnit,
            String station,
            String mortalitySource,
            String collectionRoute,
            String clinicalSigns,
            String samplingBasis,
            String jawStatus,
            String jawReason,
            List<Identifier> identifiers,
            boolean enteredInError,
            String errorReason,
            @JsonUnwrapped AnimalDetails details) {}

    /**
     * The animal's outcome for one disease.
     *
     * @param derivedOutcome what the findings say; only for those who may see unreleased outcomes
     * @param explanation why, in words; only for the same
     * @param review why a person should look; only for the same
     * @param rules the plan's rules that it was derived by, in words; only for the same
     * @param earlier what it was derived as before, newest first; only for the same
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record OutcomeOfDisease(
            String disease,
            String outcome,
            String derivedOutcome,
            String footnotes,
            String exclusion,
            String explanation,
            String review,
            String rules,
            List<EarlierReason> earlier) {}

    /** What an outcome was derived as before: why, by which rules (empty: not kept then), and until when that stood. */
    public record EarlierReason(String explanation, String rules, Instant derivedAt, Instant until) {}

    /** Where and for when the kit's labels were issued; a kit used elsewhere or later is accepted and shown. */
    public record KitIssue(String season, String station, boolean usedElsewhere) {}

    /** Something missing, or to be done next: a stable word, a sentence and where to do it (or null). */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Open(String what, String words, String href) {}

    /** Whether a swapped label waits for a second person. */
    @JsonIgnore
    public boolean isSwapOpen() {
        return reAttributions.stream().anyMatch(one -> one.state().equals("ASKED"));
    }

    /** What the identity exceptions do to the animal, one sentence each. */
    @JsonIgnore
    public List<Open> exceptionsTold() {
        return identityExceptions.stream().map(StoryRules::exception).toList();
    }

    AnimalStory warned(List<String> of) {
        return new AnimalStory(
                kit,
                keyClass,
                ageClass,
                ageDisputed,
                readingsHidden,
                outcome,
                season,
                facts,
                outcomes,
                jawReadings,
                jawPhotos,
                designatedAges,
                specimens,
                findings,
                reAttributions,
                identityExceptions,
                links,
                sameAs,
                duplicates,
                notAttributable,
                issued,
                missing,
                next,
                timeline,
                of,
                recordedBy,
                recordedAt,
                version);
    }
}
