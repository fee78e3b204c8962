package org.dentary.intake;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import org.dentary.animal.AnimalFacts;
import org.dentary.animal.AnimalService;
import org.dentary.animal.vault.Contact;
import org.dentary.animal.vault.ContactService;
import org.dentary.animal.vault.ExactPoint;
import org.dentary.kit.KitService;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.account.Role;
import org.dentary.platform.problem.NotAllowed;

/** Whom to tell of an animal and where it died: written at intake or later, never shown beside the animal. */
@ApplicationScoped
public class PrivateService {
    private final KitService kits;
    private final AnimalService animals;
    private final ContactService contacts;
    private final PlanService plan;
    private final CurrentAccount current;

    PrivateService(
            KitService kits, AnimalService animals, ContactService contacts, PlanService plan, CurrentAccount current) {
        this.kits = kits;
        this.animals = animals;
        this.contacts = contacts;
        this.plan = plan;
        this.current = current;
    }

    /**
     * Keeps it of an animal that was taken in; a part that is left out stays as it is kept.
     *
     * @throws NotAllowed for a sampler at another station, or where somebody else's contact is kept
     * @throws org.dentary.platform.problem.InvalidInput for a point outside the animal's unit
     */
    @Transactional
    public void write(String typed, WritePrivate given) {
        String kit = kits.kit(typed);
        AnimalFacts facts = animals.animal(kit).facts();
        requireServed(facts.station());
        keep(kit, facts.unit(), given.contact(), given.point());
    }

    /** Whether something private of the animal is kept, which tells nothing of it. */
    public boolean isKept(String kit) {
        return contacts.isKept(kit);
    }

    /** The same for an animal whose unit the caller knows; parts that are null stay, both null is nothing to do. */
    void keep(String kit, String unit, Contact contact, ExactPoint point) {
        if (contact == null && point == null) {
            return;
        }
        if (point != null && point.latitude() != null) {
            PrivateRules.requireWithin(
                    unit, point, plan.boundaries().stream().map(UnitShape::of).toList());
        }
        contacts.write(kit, contact, point);
    }

    /** @throws NotAllowed for a sampler who does not serve the station */
    void requireServed(String station) {
        Account account = current.get();
        if (account.role() == Role.SAMPLER && !account.serves(station)) {
            throw new NotAllowed(
                    "STATION_NOT_SERVED",
                    account.username() + " does not serve station " + station + "; the coordinator can change that");
        }
    }
}
