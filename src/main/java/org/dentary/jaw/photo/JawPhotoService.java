package org.dentary.jaw.photo;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.dentary.animal.AnimalService;
import org.dentary.jaw.JawReadingService;
import org.dentary.people.PeopleService;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.photo.PhotoReader;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotAllowed;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;

/** Photographs of jaws, for readers who have no jaw in hand. Kits are given as the eight characters of their code. */
@ApplicationScoped
public class JawPhotoService {
    private static final String PHOTO = "jaw-photo";
    private static final int MOST_PER_ANIMAL = 8;

    private final JawPhotoQueries queries;
    private final JawPhotoWrites writes;
    private final AnimalService animals;
    private final JawReadingService readings;
    private final PeopleService people;
    private final RepeatableRequests requests;
    private final CurrentAccount current;
    private final Clock clock;

    JawPhotoService(
            JawPhotoQueries queries,
            JawPhotoWrites writes,
            AnimalService animals,
            JawReadingService readings,
            PeopleService people,
            RepeatableRequests requests,
            CurrentAccount current,
            Clock clock) {
        this.queries = queries;
        this.writes = writes;
        this.animals = animals;
        this.readings = readings;
        this.people = people;
        this.requests = requests;
        this.current = current;
        this.clock = clock;
    }

    private record Sent(String kit, UUID reading, String file) {}

    /** A photograph that was sent, and whether it is new. */
    record Added(JawPhotoView photo, boolean isNew) {}

    /** The photographs of an animal's jaw, oldest first. */
    public List<JawPhotoView> ofKit(String kit) {
        return queries.ofKit(kit).stream().map(JawPhotoQueries.Row::view).toList();
    }

    /**
     * Keeps a photograph of an animal that was taken in. Sent again it changes nothing.
     *
     * @param reading a reading of this animal that it goes with, or null
     * @throws InvalidInput J27 if it is another animal's already, or if the reading is another animal's
     * @throws RuleBroken if the id stands for another photograph, or the animal has as many as it may
     */
    @Transactional
    Added add(String kit, UUID id, UUID reading, PhotoReader.Photo photo) {
        people.requireAcknowledged(current.get());
        animals.lockedVersion(kit);
        animals.animal(kit);
        Sent sent = new Sent(kit, reading, photo.sent());
        Integer version = queries.byId(id).map(row -> 0).orElse(null);
        if (requests.compare(PHOTO, id.toString(), sent, version != null) == Seen.REPLAY) {
            return new Added(row(kit, id).view(), false);
        }
        if (reading != null && !readings.reading(reading).kit().equals(kit)) {
            throw InvalidInput.field("reading", "OTHER_ANIMAL", "Reading " + reading + " is not one of kit " + kit);
        }
        refuseSecondUse(kit, photo);
        if (queries.ofKit(kit).size() >= MOST_PER_ANIMAL) {
            throw new RuleBroken(
                    "TOO_MANY_PHOTOS",
                    "Kit " + kit + " has " + MOST_PER_ANIMAL + " photos already; erase one that shows nothing first");
        }
        writes.add(id, kit, reading, photo, current.get().actor(), clock.instant());
        requests.accept(PHOTO, id.toString(), sent);
        return new Added(row(kit, id).view(), true);
    }

    private void refuseSecondUse(String kit, PhotoReader.Photo photo) {
        queries.byDigest(photo.digest()).ifPresent(there -> {
            if (there.kit().equals(kit)) {
                throw new RuleBroken("PHOTO_KEPT_ALREADY", "This photo of kit " + kit + " is kept already");
            }
            throw InvalidInput.field(
                    "photo",
                    "J27",
                    "This photo is already of the jaw of kit " + there.kit()
                            + "; one jaw is one animal's. Check the labels of both");
        });
    }

    /**
     * The picture, as JPEG.
     *
     * @param small whether the small copy will do
     * @throws NotFound if the animal has no such photograph, or no longer
     */
    public byte[] picture(String kit, UUID id, boolean small) {
        return queries.content(UUID.fromString(row(kit, id).id()), small);
    }

    /**
     * Erases a photograph: who, when and why stay, the picture does not. Again it changes nothing.
     *
     * @throws NotAllowed unless who erases it added it or may put right
     */
    @Transactional
    void erase(String kit, UUID id, String reason) {
        if (reason == null || reason.isBlank() || reason.length() > 500) {
            throw InvalidInput.field("reason", "REQUIRED", "Say why the photo is erased, in up to 500 characters");
        }
        animals.lockedVersion(kit);
        JawPhotoQueries.Row row =
                queries.byId(id).filter(there -> there.kit().equals(kit)).orElseThrow(() -> unknown(kit, id));
        Account account = current.get();
        if (!account.may(Act.PUT_RIGHT) && !row.addedBy().equals(account.actor())) {
            throw new NotAllowed(
                    "OTHERS_PHOTO", "This photo was added by " + row.addedBy() + "; they or a coordinator erase it");
        }
        if (row.erasedAt() == null) {
            writes.erase(id, reason.trim(), account.actor(), clock.instant());
        }
    }

    private JawPhotoQueries.Row row(String kit, UUID id) {
        return queries.byId(id)
                .filter(there -> there.kit().equals(kit) && there.erasedAt() == null)
                .orElseThrow(() -> unknown(kit, id));
    }

    private static NotFound unknown(String kit, UUID id) {
        return new NotFound("PHOTO_UNKNOWN", "Kit " + kit + " has no photo " + id + ", or no longer");
    }
}
