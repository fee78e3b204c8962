package org.dentary.story;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.dentary.animal.AnimalFacts;
import org.dentary.animal.AnimalService;
import org.dentary.animal.AnimalView;
import org.dentary.animal.line.LineView;
import org.dentary.custody.CustodyService;
import org.dentary.custody.HeadView;
import org.dentary.custody.identity.IdentityExceptionView;
import org.dentary.custody.identity.IdentityExceptionViews;
import org.dentary.jaw.AgeDesignationService;
import org.dentary.jaw.DesignationView;
import org.dentary.jaw.JawReadingService;
import org.dentary.jaw.JawReadingView;
import org.dentary.jaw.photo.JawPhotoService;
import org.dentary.jaw.photo.JawPhotoView;
import org.dentary.jaw.queue.JawQueueService;
import org.dentary.jaw.queue.JawTask;
import org.dentary.kit.KitService;
import org.dentary.plan.LaboratoryView;
import org.dentary.plan.PlanService;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.Act;
import org.dentary.specimen.PreservationView;
import org.dentary.specimen.ReAttributionService;
import org.dentary.specimen.ReAttributionView;
import org.dentary.specimen.SpecimenService;
import org.dentary.specimen.SpecimenView;

/**
 * Tells an animal's story to an account, as far as it may know: without {@link Act#DERIVED_OUTCOME} only released
 * outcomes and nothing from which the others could be computed, without {@link Act#RESULT_READ} no findings; to somebody
 * who may yet give a second reading, no reading before theirs.
 */
@ApplicationScoped
public class StoryService {
    private static final String AT_LABORATORY = "LABORATORY";
    private static final String AT_LABORATORY_KIND = "PARTY";

    private final KitService kits;
    private final AnimalService animals;
    private final JawReadingService jaws;
    private final AgeDesignationService ages;
    private final JawQueueService queue;
    private final JawPhotoService photos;
    private final SpecimenService specimens;
    private final ReAttributionService reAttributions;
    private final CustodyService custody;
    private final IdentityExceptionViews identities;
    private final PlanService plan;
    private final StoryQueries queries;

    StoryService(
            KitService kits,
            AnimalService animals,
            JawReadingService jaws,
            AgeDesignationService ages,
            JawQueueService queue,
            JawPhotoService photos,
            SpecimenService specimens,
            ReAttributionService reAttributions,
            CustodyService custody,
            IdentityExceptionViews identities,
            PlanService plan,
            StoryQueries queries) {
        this.kits = kits;
        this.animals = animals;
        this.jaws = jaws;
        this.ages = ages;
        this.queue = queue;
        this.photos = photos;
        this.specimens = specimens;
        this.reAttributions = reAttributions;
        this.custody = custody;
        this.identities = identities;
        this.plan = plan;
        this.queries = queries;
    }

    /**
     * The answer to a write: the story without what only a reader of the whole wants (findings, explanations, links, what
     * happened), with what the write allowed and is worth a second look.
     */
    public AnimalStory answer(String kit, Account reader, List<String> warnings) {
        return story(kit, reader, false).warned(warnings);
    }

    /**
     * The story of the animal under a kit, or under any label of it.
     *
     * @throws org.dentary.platform.problem.NotFound if the kit is unknown or no animal was taken in under it
     */
    public AnimalStory story(String typed, Account reader) {
        return story(kits.kit(typed), reader, true);
    }

    private AnimalStory story(String kit, Account reader, boolean whole) {
        AnimalView animal = animals.animal(kit);
        boolean knowing = reader.may(Act.DERIVED_OUTCOME);
        List<LineView> lines = animals.lines(List.of(kit)).stream()
                .map(line -> knowing ? line : released(line))
                .toList();
        List<JawReadingView> readings = jaws.readings(kit);
        List<DesignationView> designations = ages.designations(kit);
        Optional<JawTask> task = queue.task(kit);
        boolean hidden = isHidden(reader, readings, task);
        List<SpecimenStory> tissue = tissue(kit, knowing);
        List<JawPhotoView> pictures = whole && reader.may(Act.JAW_PHOTO_READ) ? photos.ofKit(kit) : List.of();
        LineView first = lines.isEmpty() ? nothing(kit) : lines.get(0);
        List<ReAttributionView> swaps = reAttributions.ofAnimal(kit);
        List<IdentityExceptionView> exceptions = identities.ofAnimal(kit);
        StoryRules.Known known = new StoryRules.Known(
                animal,
                !readings.isEmpty(),
                task,
                tissue,
                first,
                swaps.stream().anyMatch(one -> one.state().equals("ASKED")),
                exceptions);
        return new AnimalStory(
                kit,
                hidden ? null : keyClass(readings, designations),
                hidden ? null : first.ageClass(),
                !hidden && first.ageDisputed(),
                hidden,
                first.outcome(),
                animal.season(),
                facts(animal.facts()),
                outcomes(kit, lines, knowing, whole),
                hidden ? List.of() : readings,
                pictures,
                designations,
                tissue,
                whole && reader.may(Act.RESULT_READ) ? queries.findings(kit) : List.of(),
                swaps,
                exceptions,
                whole ? animals.links(kit) : List.of(),
                animal.sameAs(),
                whole ? animals.duplicatesOf(kit) : List.of(),
                animal.notAttributable(),
                whole ? issue(kit, animal) : null,
                StoryRules.missing(known),
                StoryRules.next(known),
                whole ? queries.timeline(kit, knowing, lateHours(animal)) : List.of(),
                List.of(),
                animal.recordedBy(),
                animal.recordedAt(),
                animal.version());
    }

    private int lateHours(AnimalView animal) {
        return plan.settings().wholeNumber(PlanSetting.CUSTODY_LATE_HOURS, animal.season(), null, null);
    }

    /** A line as everybody may know it: what is derived is what is released. */
    private static LineView released(LineView line) {
        return new LineView(
                line.kit(),
                line.disease(),
                line.ageClass(),
                line.ageDisputed(),
                line.hasSpecimen(),
                line.outcome(),
                line.outcome(),
                line.footnotes(),
                line.exclusion());
    }

    private static LineView nothing(String kit) {
        return new LineView(kit, "", "UNKNOWN", false, false, "NOT_TESTED", "NOT_TESTED", "", "");
    }

    /** Whoever takes animals in may be the second reader; while one is wanted the first reading is kept from them. */
    private static boolean isHidden(Account reader, List<JawReadingView> readings, Optional<JawTask> task) {
        boolean wanted = task.filter(each -> each.task().equals("READ_AGAIN")).isPresent();
        return wanted
                && reader.may(Act.INTAKE)
                && readings.stream().noneMatch(reading -> reading.examiner().equals(reader.actor()));
    }

    private static String keyClass(List<JawReadingView> readings, List<DesignationView> designations) {
        Optional<JawReadingView> standing = designations.isEmpty()
                ? readings.stream()
                        .filter(reading -> reading.keyClass() != null)
                        .findFirst()
                : readings.stream()
                        .filter(reading -> reading.id()
                                .equals(designations
                                        .get(designations.size() - 1)
                                        .reading()))
                        .findFirst();
        return standing.map(JawReadingView::keyClass).map(Enum::name).orElse(null);
    }

    private List<AnimalStory.OutcomeOfDisease> outcomes(
            String kit, List<LineView> lines, boolean knowing, boolean whole) {
        return whole && knowing
                ? OutcomeStories.of(lines, queries.explanations(kit), queries.earlierExplanations(kit))
                : OutcomeStories.of(lines, knowing);
    }

    private List<SpecimenStory> tissue(String kit, boolean knowing) {
        List<SpecimenView> taken = specimens.ofKit(kit);
        List<String> codes = taken.stream().map(SpecimenView::code).toList();
        Map<String, HeadView> heads = custody.heads(codes);
        // From its first laboratory on, where it goes tells what was found there, on the way to the next one too.
        Set<String> received = knowing ? Set.of() : custody.received(codes);
        Map<String, List<PreservationView>> kept =
                specimens.preservation(kit).stream().collect(Collectors.groupingBy(PreservationView::code));
        Set<String> laboratories =
                plan.laboratories().stream().map(LaboratoryView::code).collect(Collectors.toSet());
        return taken.stream()
                .map(specimen -> {
                    HeadView head = heads.get(specimen.code());
                    boolean masked = !knowing
                            && head != null
                            && (received.contains(specimen.code()) || laboratories.contains(head.custodian()));
                    return new SpecimenStory(
                            specimen.code(),
                            specimen.part(),
                            specimen.kitPrinted().equals(kit) ? null : specimen.kitPrinted(),
                            specimen.parent(),
                            specimen.tissue(),
                            specimen.tissueText(),
                            specimen.side(),
                            specimen.condition(),
                            specimen.preservation(),
                            specimen.collectedAt(),
                            specimen.collectedBy(),
                            specimen.archived(),
                            head == null ? null : masked ? AT_LABORATORY_KIND : head.custodianKind(),
                            head == null ? null : masked ? AT_LABORATORY : head.custodian(),
                            head == null || masked ? null : head.place(),
                            head == null || masked ? null : head.box(),
                            head == null ? null : !masked && head.offered(),
                            kept.getOrDefault(specimen.code(), List.of()),
                            specimen.version());
                })
                .toList();
    }

    private AnimalStory.KitIssue issue(String kit, AnimalView animal) {
        return queries.issue(kit).stream()
                .findFirst()
                .map(issue -> new AnimalStory.KitIssue(
                        issue.season(),
                        issue.station(),
                        !issue.station().equals(animal.facts().station())
                                || animal.season() != null && !issue.season().equals(animal.season())))
                .orElse(null);
    }

    private static AnimalStory.Facts facts(AnimalFacts facts) {
        return new AnimalStory.Facts(
                facts.species(),
                facts.origin().name(),
                facts.sex().name(),
                facts.sexEvidence().name(),
                facts.diedOn(),
                facts.diedOnPrecision().name(),
                facts.diedOnReason(),
                facts.unit() == null ? "UNKNOWN" : facts.unit(),
                facts.station(),
                facts.mortalitySource().name(),
                facts.collectionRoute().name(),
                facts.clinicalSigns().name(),
                facts.samplingBasis().name(),
                facts.jawStatus().name(),
                facts.jawReason(),
                facts.identifiers(),
                facts.enteredInError(),
                facts.errorReason(),
                facts.details());
    }
}
