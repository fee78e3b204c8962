package org.dentary.intake.putright;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.transaction.Transactional;
import java.util.List;
import org.dentary.animal.AnimalService;
import org.dentary.animal.line.LineService;
import org.dentary.jaw.AgeDesignationService;
import org.dentary.jaw.DesignateAge;
import org.dentary.kit.KitService;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.specimen.ReAttributionService;
import org.dentary.specimen.SpecimensRecorded;

/** Puts right what was entered: the age that stands, and kits that are one animal. */
@ApplicationScoped
public class PutRightService {
    private final KitService kits;
    private final AnimalService animals;
    private final AgeDesignationService ages;
    private final ReAttributionService reAttributions;
    private final LineService lines;
    private final Event<SpecimensRecorded> recorded;

    PutRightService(
            KitService kits,
            AnimalService animals,
            AgeDesignationService ages,
            ReAttributionService reAttributions,
            LineService lines,
            Event<SpecimensRecorded> recorded) {
        this.kits = kits;
        this.animals = animals;
        this.ages = ages;
        this.reAttributions = reAttributions;
        this.lines = lines;
        this.recorded = recorded;
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
        lines.hold(List.of(kit, other));
        reAttributions.requireNoneOpenBetween(kit, other);
        boolean isNew = animals.link(kit, other, why.reason(), why.evidence());
        if (isNew) {
            tissueFollows(kit, other, "SAME_AS");
        }
        return isNew;
    }

    /** Undoes the link of a kit; see {@link AnimalService#unlink}. */
    @Transactional
    public void unlink(String typed, String reason) {
        String kit = kits.kit(typed);
        animals.unlink(kit, reason).ifPresent(counted -> tissueFollows(kit, counted, "SAME_AS_UNDONE"));
    }

    /** What was taken and found under one kit of an animal is the animal's: the others are told of it, or no more. */
    private void tissueFollows(String kit, String counted, String cause) {
        lines.settle(List.of(kit, counted), cause);
        recorded.fire(new SpecimensRecorded(List.of(kit, counted), cause));
    }
}
