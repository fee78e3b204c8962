package org.dentary.story;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.dentary.animal.AnimalFacts;
import org.dentary.animal.AnimalView;
import org.dentary.animal.JawStatus;
import org.dentary.animal.MortalitySource;
import org.dentary.animal.Sex;
import org.dentary.animal.line.LineView;
import org.dentary.custody.identity.IdentityExceptionView;
import org.dentary.jaw.queue.JawTask;
import org.dentary.story.AnimalStory.Open;

/** What is missing of an animal and what is to be done next, from what the reader may know. Pure. */
final class StoryRules {
    private StoryRules() {}

    /**
     * What the two lists rest on.
     *
     * @param line the animal's line for one disease, its derived outcome the released one where the reader may know no more
     */
    record Known(
            AnimalView animal,
            boolean read,
            Optional<JawTask> jaw,
            List<SpecimenStory> specimens,
            LineView line,
            boolean swapOpen,
            List<IdentityExceptionView> exceptions) {}

    /** Facts that are not known, in the order of the intake form. */
    static List<Open> missing(Known known) {
        AnimalFacts facts = known.animal().facts();
        String kit = known.animal().kit();
        String intake = "/intake/" + kit;
        List<Open> missing = new ArrayList<>();
        if (facts.diedOn() == null) {
            missing.add(new Open("DIED_ON", "The day of death is not known: " + facts.diedOnReason() + ".", intake));
        }
        if (facts.unit() == null) {
            missing.add(new Open("MANAGEMENT_UNIT", "The management unit is not known.", intake));
        }
        if (facts.sex() == Sex.UNKNOWN) {
            missing.add(new Open("SEX", "The sex is not known.", intake));
        }
        if (facts.mortalitySource() == MortalitySource.UNKNOWN) {
            missing.add(new Open("MORTALITY_SOURCE", "How it died is not known.", intake));
        }
        if (!known.read()) {
            missing.add(
                    facts.jawStatus() == JawStatus.NOT_EXAMINED
                            ? new Open("JAW", "The jaw was not examined: " + facts.jawReason() + ".", null)
                            : new Open("JAW", "The jaw has not been read.", "/animals/" + kit + "/jaw"));
        }
        if (!known.line().hasSpecimen()) {
            missing.add(new Open("SPECIMEN", "No tissue has been taken.", "/animals/" + kit + "/specimens"));
        }
        return missing;
    }

    /** What is to be done, the most urgent first; empty when nothing is. */
    static List<Open> next(Known known) {
        String kit = known.animal().kit();
        List<Open> next = new ArrayList<>();
        if (known.animal().facts().enteredInError() || known.animal().sameAs() != null) {
            return next;
        }
        if (known.swapOpen()) {
            next.add(new Open(
                    "PUT_RIGHT",
                    "A swapped label waits for a second person; until then this animal is counted nowhere.",
                    "/animals/" + kit + "/put-right"));
        }
        known.exceptions().stream()
                .filter(IdentityExceptionView::isOpen)
                .map(StoryRules::exception)
                .forEach(next::add);
        known.jaw().map(task -> jaw(task, kit)).ifPresent(next::add);
        if (!known.line().hasSpecimen()) {
            next.add(
                    new Open("TAKE_TISSUE", "Take the nodes and scan their labels.", "/animals/" + kit + "/specimens"));
        }
        known.specimens().stream()
                .filter(specimen -> Boolean.TRUE.equals(specimen.offered()))
                .findFirst()
                .ifPresent(specimen -> next.add(new Open(
                        "ACCEPT",
                        "Specimen " + Words.asLabel(specimen.code()) + " is offered and waits to be accepted.",
                        "/custody")));
        known.specimens().stream()
                .filter(specimen -> "PERSON".equals(specimen.custodianKind())
                        && !Boolean.TRUE.equals(specimen.offered())
                        && !specimen.archived()
                        && "PENDING".equals(known.line().outcome()))
                .findFirst()
                .ifPresent(specimen -> next.add(new Open(
                        "HAND_OVER",
                        "Box specimen " + Words.asLabel(specimen.code()) + " or hand it over.",
                        "/custody")));
        outcome(known.line(), next, kit);
        return next;
    }

    /** What an identity exception does to the animal, and where it is told whole. */
    static Open exception(IdentityExceptionView one) {
        String words = one.isOpen()
                ? "The identity of specimen " + Words.asLabel(one.code())
                        + " waits for a second person; until then this animal is" + " counted nowhere."
                : one.isGranted()
                        ? "Specimen " + Words.asLabel(one.code())
                                + " was accepted by a signed identity exception; every report that"
                                + " counts this animal says so."
                        : "An identity exception for specimen " + Words.asLabel(one.code())
                                + " was refused: what is found in it speaks" + " of no animal.";
        return new Open("IDENTITY_EXCEPTION", words, "/identity-exceptions/" + one.id());
    }

    private static Open jaw(JawTask task, String kit) {
        return switch (task.task()) {
            case "READ" ->
                "PHOTO_TO_READ".equals(task.jawStatus()) && task.photo() == null
                        ? new Open("ADD_PHOTO", "Add the photo of the jaw, to be read.", "/animals/" + kit + "/photos")
                        : new Open("READ_JAW", "Read the jaw.", "/animals/" + kit + "/jaw");
            case "READ_AGAIN" ->
                new Open(
                        "READ_JAW_AGAIN",
                        "Somebody who has not read this jaw reads it again, without sight of the first reading.",
                        "/animals/" + kit + "/jaw");
            default ->
                new Open(
                        "DECIDE_AGE",
                        "Readers differ; a third person decides which age stands.",
                        "/animals/" + kit + "/age");
        };
    }

    private static void outcome(LineView line, List<Open> next, String kit) {
        if ("SUSPECT".equals(line.derivedOutcome())) {
            next.add(new Open(
                    "CONFIRM", "Suspect: send tissue for confirmation, and keep it quiet until then.", "/submissions"));
        } else if ("DETECTED".equals(line.derivedOutcome()) && !"DETECTED".equals(line.outcome())) {
            next.add(new Open("RELEASE", "Detected and not released: a second person releases it.", "/results"));
        } else if ("PENDING".equals(line.outcome()) && line.hasSpecimen()) {
            next.add(new Open("WAIT", "The laboratory's result is awaited.", null));
        }
    }
}
