package org.dentary.intake;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import org.dentary.animal.AnimalService;
import org.dentary.jaw.AgeDesignationService;
import org.dentary.jaw.DesignateAge;
import org.dentary.kit.KitService;
import org.dentary.platform.problem.InvalidInput;

/** Puts right what was entered: the age that stands, and kits that are one animal. */
@ApplicationScoped
public class PutRightService {
    private final KitService kits;
    private final AnimalService animals;
    private final AgeDesignationService ages;

    PutRightService(KitService kits, AnimalService animals, AgeDesignationService ages) {
        this.kits = kits;
        this.animals = animals;
        this.ages = ages;
    }

    /** Decides which age stands; see {@link AgeDesignationService#designate}. */
    @Transactional
    public AgeDesignationService.Decided designate(String typed, DesignateAge decision, String ifMatch) {
        return ages.designate(kits.kit(typed), decision, ifMatch);
    }

    /**
     * Says that two kits are one animal.
     *
     * @return whether that is new
     */
    @Transactional
    public boolean link(String typed, String typedOther, SayWhy why) {
        if (why.evidence() == null || why.evidence().isBlank()) {
            throw InvalidInput.field(
                    "evidence", "REQUIRED", "Say what shows that both are one animal, such as the tag or a photo");
        }
        String kit = kits.kit(typed);
        String other = kits.kit(typedOther);
        boolean isNew = !other.equals(animals.animal(kit).sameAs());
        animals.link(kit, other, why.reason(), why.evidence());
        return isNew;
    }

    /** Undoes the link of a kit; see {@link AnimalService#unlink}. */
    @Transactional
    public void unlink(String typed, String reason) {
        animals.unlink(kits.kit(typed), reason);
    }
}
