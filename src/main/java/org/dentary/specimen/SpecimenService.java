package org.dentary.specimen;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.dentary.animal.AnimalService;
import org.dentary.animal.AnimalView;
import org.dentary.animal.DiedOnPrecision;
import org.dentary.animal.MortalitySource;
import org.dentary.animal.line.LineService;
import org.dentary.codes.Part;
import org.dentary.kit.KitService;
import org.dentary.kit.LabelView;
import org.dentary.plan.PlanService;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.ETags;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;

/**
 * Tissue taken from animals that were taken in. Beginning its custody and telling that it is there ({@link
 * SpecimensRecorded}) is the caller's, in the same transaction.
 */
@ApplicationScoped
public class SpecimenService {
    private static final String SPECIMEN = "specimen";

    private final SpecimenQueries queries;
    private final SpecimenWrites writes;
    private final KitService kits;
    private final AnimalService animals;
    private final LineService lines;
    private final PlanService plan;
    private final RepeatableRequests requests;
    private final CurrentAccount current;
    private final Clock clock;

    SpecimenService(
            SpecimenQueries queries,
            SpecimenWrites writes,
            KitService kits,
            AnimalService animals,
            LineService lines,
            PlanService plan,
            RepeatableRequests requests,
            CurrentAccount current,
            Clock clock) {
        this.queries = queries;
        this.writes = writes;
        this.kits = kits;
        this.animals = animals;
        this.lines = lines;
        this.plan = plan;
        this.requests = requests;
        this.current = current;
        this.clock = clock;
    }

    private record Sent(String kit, String parent, TakeSpecimen specimen) {}

    /**
     * What a write added.
     *
     * @param added the specimens that were not there before, in the order given
     * @param warnings what is allowed and worth a second look
     */
    public record Recorded(List<TakeSpecimen> added, List<String> warnings) {}

    /** Specimens of an animal, pieces included, in the order they were taken. */
    public List<SpecimenView> ofKit(String kit) {
        return queries.byKit(List.of(kit));
    }

    /** The same of an animal under several kits. */
    public List<SpecimenView> ofKits(Collection<String> kits) {
        return queries.byKit(kits);
    }

    /** How the specimens of an animal have been kept, by code and time. */
    public List<PreservationView> preservation(String kit) {
        return queries.preservation(kit);
    }

    /** The specimens of those label codes, sorted; codes without one are left out. */
    public List<SpecimenView> byCode(Collection<String> codes) {
        return codes.isEmpty() ? List.of() : queries.byCode(codes);
    }

    /**
     * The specimen under a typed label code.
     *
     * @throws NotFound if the label holds none
     */
    public SpecimenView specimen(String typed) {
        LabelView label = kits.label(typed);
        return queries.byCode(List.of(label.code())).stream()
                .findFirst()
                .orElseThrow(
                        () -> new NotFound("SPECIMEN_UNKNOWN", "No specimen was recorded under label " + label.code()));
    }

    /**
     * Records specimens of one animal. One that was sent before under the same label is left alone.
     *
     * @param at path of the list in the request, such as {@code specimens}; empty for a single one
     * @throws InvalidInput naming every field at fault
     * @throws RuleBroken if a label is another kit's or void, or holds another specimen
     */
    @Transactional
    public Recorded record(String kit, List<TakeSpecimen> given, String at) {
        return add(kit, null, given, at);
    }

    /** Records a piece cut from a specimen, under a label of the same kit; what it leaves out is as the specimen's. */
    @Transactional
    public Recorded recordPiece(SpecimenView parent, String typed, CutPiece piece) {
        return add(parent.kit(), parent, List.of(piece.of(parent, typed)), "");
    }

    /**
     * Corrects a specimen, or says that it is kept differently now.
     *
     * @return today's version
     * @throws InvalidInput naming every field at fault
     */
    @Transactional
    public int correct(String kit, TakeSpecimen given, String ifMatch) {
        LabelView label = kits.label(given.code());
        TakeSpecimen wanted = given.under(label.code());
        Sent sent = new Sent(kit, null, wanted);
        Integer version = queries.lockedVersion(wanted.code());
        Seen seen = requests.compare(SPECIMEN, wanted.code(), sent, ifMatch, version);
        if (seen == Seen.REPLAY) {
            return version;
        }
        if (wanted.reason() == null || wanted.reason().isBlank()) {
            throw InvalidInput.field("reason", "REQUIRED", "Say why the specimen is changed");
        }
        SpecimenLabels.requireUsable(kit, label, "");
        List<FieldProblem> problems = new ArrayList<>(SpecimenRules.problems(
                wanted, around(animals.animal(kit), null).under(Part.valueOf(label.part())), ""));
        if (!problems.isEmpty()) {
            throw InvalidInput.of(problems);
        }
        SpecimenView before = queries.byCode(List.of(wanted.code())).get(0);
        String actor = current.get().actor();
        writes.correct(wanted, actor, wanted.reason());
        if (!before.preservation().equals(wanted.preservation().name())) {
            writes.preserve(List.of(wanted), actor, wanted.reason());
        }
        requests.accept(SPECIMEN, wanted.code(), sent);
        return version + 1;
    }

    /**
     * Says that a specimen is kept differently from a moment on, such as chilled tissue put into the freezer.
     *
     * @param reason why, kept with the change
     * @throws NotFound if the label holds no specimen
     * @throws InvalidInput without a reason, before collection, or if it is kept like this already
     */
    @Transactional
    public void keep(String typed, Preservation preservation, OffsetDateTime at, String reason) {
        SpecimenView there = specimen(typed);
        if (there.preservation().equals(preservation.name())) {
            throw InvalidInput.field(
                    "preservation",
                    "KEPT_LIKE_THIS",
                    there.code() + " is " + preservation.words().toLowerCase(java.util.Locale.ROOT)
                            + " already; was another tube meant?");
        }
        correct(
                there.kit(),
                new TakeSpecimen(
                        there.code(),
                        Tissue.valueOf(there.tissue()),
                        there.tissueText(),
                        Side.valueOf(there.side()),
                        preservation,
                        Condition.valueOf(there.condition()),
                        there.collectedAt().atOffset(java.time.ZoneOffset.UTC),
                        there.collectedBy(),
                        at,
                        there.archived(),
                        null,
                        null,
                        reason),
                ETags.of(there.version()));
    }

    /** Whether a specimen is recorded under the label. */
    public boolean exists(String code) {
        return !queries.byCode(List.of(code)).isEmpty();
    }

    private Recorded add(String kit, SpecimenView parent, List<TakeSpecimen> given, String at) {
        if (given.isEmpty()) {
            return new Recorded(List.of(), List.of());
        }
        AnimalView animal = animals.animal(kit);
        List<String> typed =
                given.stream().map(TakeSpecimen::code).filter(Objects::nonNull).toList();
        kits.hold(typed);
        Map<String, LabelView> labels = kits.find(typed);
        List<FieldProblem> problems = new ArrayList<>();
        List<TakeSpecimen> wanted = SpecimenLabels.kept(given, labels, at, problems);
        Map<String, SpecimenView> existing = byCode(
                        wanted.stream().map(TakeSpecimen::code).toList())
                .stream()
                .collect(Collectors.toMap(SpecimenView::code, Function.identity()));
        List<TakeSpecimen> added = new ArrayList<>();
        List<String> warnings = new ArrayList<>();
        Map<String, LabelView> byCode = labels.values().stream()
                .collect(Collectors.toMap(LabelView::code, Function.identity(), (first, same) -> first));
        SpecimenRules.Surroundings around = around(animal, parent);
        for (int i = 0; i < wanted.size(); i++) {
            TakeSpecimen specimen = wanted.get(i);
            LabelView label = byCode.get(specimen.code());
            Integer version = existing.containsKey(specimen.code()) ? 0 : null;
            String path = at.isEmpty() ? "" : at + "[" + i + "].";
            if (version != null
                    && requests.compare(SPECIMEN, specimen.code(), sent(kit, parent, specimen), null, version)
                            == Seen.REPLAY) {
                continue;
            }
            SpecimenLabels.requireUsable(kit, label, path);
            problems.addAll(SpecimenRules.problems(specimen, around.under(Part.valueOf(label.part())), path));
            SpecimenRules.warning(Part.valueOf(label.part()), specimen).ifPresent(warnings::add);
            added.add(specimen);
        }
        if (!problems.isEmpty()) {
            throw InvalidInput.of(problems);
        }
        if (!added.isEmpty()) {
            writes.insert(
                    added, parent == null ? null : parent.code(), current.get().actor(), clock.instant());
            added.forEach(specimen -> requests.accept(SPECIMEN, specimen.code(), sent(kit, parent, specimen)));
            lines.settle(List.of(kit), "SPECIMEN");
        }
        return new Recorded(added, warnings);
    }

    private static Sent sent(String kit, SpecimenView parent, TakeSpecimen specimen) {
        return new Sent(kit, parent == null ? null : parent.code(), specimen);
    }

    private SpecimenRules.Surroundings around(AnimalView animal, SpecimenView parent) {
        boolean dayKnown = animal.facts().diedOnPrecision() == DiedOnPrecision.DAY
                && animal.facts().mortalitySource() != MortalitySource.LIVE;
        return new SpecimenRules.Surroundings(
                null,
                dayKnown ? animal.facts().diedOn() : null,
                plan.station(animal.facts().station()).zone(),
                parent == null ? null : parent.collectedAt(),
                clock.instant(),
                Duration.ofMinutes(
                        plan.settings().wholeNumber(PlanSetting.CLOCK_SKEW_MINUTES, animal.season(), null, null)));
    }
}
