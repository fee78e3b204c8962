package org.dentary.jaw.practice;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.dentary.animal.AnimalService;
import org.dentary.jaw.JawReadingService;
import org.dentary.jaw.JawReadingView;
import org.dentary.jaw.photo.JawPhotoService;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;

/** The reference panel: animals' jaws of known or agreed age, with photos. The drawn jaws are always on it. */
@ApplicationScoped
public class ReferencePanelService {
    private static final String REFERENCE = "reference-jaw";

    private final PracticeQueries queries;
    private final PracticeWrites writes;
    private final AnimalService animals;
    private final JawReadingService readings;
    private final JawPhotoService photos;
    private final RepeatableRequests requests;
    private final CurrentAccount current;
    private final Clock clock;

    ReferencePanelService(
            PracticeQueries queries,
            PracticeWrites writes,
            AnimalService animals,
            JawReadingService readings,
            JawPhotoService photos,
            RepeatableRequests requests,
            CurrentAccount current,
            Clock clock) {
        this.queries = queries;
        this.writes = writes;
        this.animals = animals;
        this.readings = readings;
        this.photos = photos;
        this.requests = requests;
        this.current = current;
        this.clock = clock;
    }

    private record Sent(String kit) {}

    /** The panel's reference jaws, those in use first, then the newest. */
    public List<ReferenceJawView> all() {
        return queries.references().stream().map(ReferenceJawView::of).toList();
    }

    /**
     * Puts an animal's jaw on the panel. Sent again it changes nothing.
     *
     * @return whether it is new
     * @throws RuleBroken if its age is neither known nor agreed, it has no photo, or it is on the panel already
     */
    @Transactional
    boolean add(UUID id, String kit) {
        animals.lockedVersion(kit);
        animals.animal(kit);
        Integer version = queries.reference(id).map(row -> 0).orElse(null);
        if (requests.compare(REFERENCE, id.toString(), new Sent(kit), version != null) == Seen.REPLAY) {
            return false;
        }
        List<JawReadingView> given = readings.readings(kit);
        PanelRules.Standard standard = PanelRules.standard(given)
                .orElseThrow(() -> new RuleBroken(
                        "AGE_NOT_ESTABLISHED",
                        "Kit " + kit + " has neither an age known from one mark nor two readers, one of them blind, who"
                                + " agree with nobody against them; only such jaws measure readers"));
        if (photos.ofKit(kit).isEmpty()) {
            throw new RuleBroken(
                    "NO_PHOTO",
                    "Kit " + kit + " has no photo of its jaw; add one that shows no label, then put it here");
        }
        if (queries.references().stream().anyMatch(row -> row.kit().equals(kit) && row.retiredAt() == null)) {
            throw new RuleBroken("ON_THE_PANEL", "Kit " + kit + " is on the panel already");
        }
        writes.add(
                id,
                kit,
                standard.kind().name(),
                standard.ageClass().name(),
                seen(given, standard).orElse(null),
                standard.source(),
                current.get().actor(),
                clock.instant());
        requests.accept(REFERENCE, id.toString(), new Sent(kit));
        return true;
    }

    /** What somebody saw who came to the same class, so that the key's steps can be shown. */
    private static Optional<String> seen(List<JawReadingView> given, PanelRules.Standard standard) {
        return given.stream()
                .filter(reading -> reading.keyClass() != null
                        && reading.keyClass().ageClass() == standard.ageClass()
                        && !reading.disputed())
                .map(reading -> reading.observation().toString())
                .findFirst();
    }

    /** Takes a jaw off the panel; rounds that had it keep it. Again it changes nothing. */
    @Transactional
    void retire(UUID id, String reason) {
        if (reason == null || reason.isBlank() || reason.length() > 500) {
            throw InvalidInput.field("reason", "REQUIRED", "Say why it leaves the panel, in up to 500 characters");
        }
        queries.reference(id).orElseThrow(() -> new NotFound("REFERENCE_UNKNOWN", "No jaw " + id + " is on the panel"));
        writes.retire(id, reason.trim(), current.get().actor(), clock.instant());
    }

    ReferenceJawView reference(UUID id) {
        return queries.reference(id)
                .map(ReferenceJawView::of)
                .orElseThrow(() -> new NotFound("REFERENCE_UNKNOWN", "No jaw " + id + " is on the panel"));
    }
}
