package org.dentary.animal;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.dentary.animal.line.LineService;
import org.dentary.animal.line.LineView;
import org.dentary.animal.vault.CallerIndexService;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.plan.SpeciesView;
import org.dentary.plan.StationView;
import org.dentary.plan.UnitView;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;

/** Animals: their facts, and which kits are one animal. Kits are given as the eight characters of their code. */
@ApplicationScoped
public class AnimalService {
    private final AnimalRepository animals;
    private final AnimalQueries queries;
    private final AnimalWrites writes;
    private final CallerIndexService callers;
    private final LineService lines;
    private final PlanService plan;
    private final CurrentAccount current;
    private final ObjectMapper json;
    private final Clock clock;

    AnimalService(
            AnimalRepository animals,
            AnimalQueries queries,
            AnimalWrites writes,
            CallerIndexService callers,
            LineService lines,
            PlanService plan,
            CurrentAccount current,
            ObjectMapper json,
            Clock clock) {
        this.animals = animals;
        this.queries = queries;
        this.writes = writes;
        this.callers = callers;
        this.lines = lines;
        this.plan = plan;
        this.current = current;
        this.json = json;
        this.clock = clock;
    }

    /** The animal under that kit; empty if none was taken in. */
    public Optional<AnimalView> find(String kit) {
        return queries.animal(kit);
    }

    /**
     * The animal under that kit.
     *
     * @throws NotFound if none was taken in
     */
    public AnimalView animal(String kit) {
        return find(kit)
                .orElseThrow(() -> new NotFound(
                        "ANIMAL_UNKNOWN", "No animal was taken in under kit " + kit + "; take it in first"));
    }

    /** The open lines of those kits, by kit and set-up order of the diseases. */
    public List<LineView> lines(Collection<String> kits) {
        return kits.isEmpty() ? List.of() : queries.lines(kits);
    }

    /** Every linking and unlinking that names the kit, oldest first. */
    public List<LinkView> links(String kit) {
        return queries.links(kit);
    }

    /** The kit that counts for the animal under a kit, which may be itself. */
    public String counted(String kit) {
        String sameAs = animal(kit).sameAs();
        return sameAs == null ? kit : sameAs;
    }

    /** Every kit of the animal under a kit, the one that counts first; empty if none was taken in. */
    public List<String> kitsOf(String kit) {
        return queries.kitsOf(kit);
    }

    /** The kits that are duplicates of this one, sorted. */
    public List<String> duplicatesOf(String kit) {
        return queries.duplicatesOf(kit);
    }

    /** Today's version of the animal, its row locked until the transaction ends; empty if none was taken in. */
    @Transactional
    public Optional<Integer> lockedVersion(String kit) {
        return animals.findByIdOptional(kit, LockModeType.PESSIMISTIC_WRITE).map(Animal::version);
    }

    /**
     * Records a new animal. Its lines are opened by the caller, who knows its age and tissue.
     *
     * @throws InvalidInput naming every field at fault
     */
    @Transactional
    public void take(String kit, AnimalFacts facts) {
        Optional<SeasonView> season = check(facts);
        Animal animal = new Animal(kit, current.get().actor(), clock.instant());
        animal.become(facts, season.map(SeasonView::code).orElse(null), text(facts.details()));
        animals.persist(animal);
        animals.flush();
        writes.identify(kit, facts.identifiers(), false);
        List<String> registrations = CallerIndexService.registrations(facts.identifiers());
        if (!registrations.isEmpty()) {
            callers.registrations(kit, registrations);
        }
    }

    /**
     * Corrects the facts of an animal and revises its lines; what was there before stays in its history with the reason.
     *
     * @throws InvalidInput naming every field at fault
     */
    @Transactional
    public void correct(String kit, AnimalFacts facts, String reason) {
        Optional<SeasonView> season = check(facts);
        writes.reason(reason);
        Animal animal = animals.findById(kit, LockModeType.PESSIMISTIC_WRITE);
        animal.correct(facts, season.map(SeasonView::code).orElse(null), text(facts.details()));
        animals.flush();
        List<String> registrations = CallerIndexService.registrations(facts.identifiers());
        // Those that stay as they were are left alone, so that a correction puts nothing back that was erased.
        boolean renumbered = !registrations.equals(CallerIndexService.registrations(queries.identifiers(kit)));
        writes.identify(kit, facts.identifiers(), true);
        if (renumbered) {
            callers.registrations(kit, registrations);
        }
        lines.refreshFacts(List.of(kit), facts.enteredInError() ? "ENTERED_IN_ERROR" : "CORRECTION");
    }

    /**
     * Says that two kits are one animal. From then on {@code kit} is the duplicate and {@code counts} the one counted.
     * Saying it again changes nothing.
     *
     * @return whether that is new
     * @throws RuleBroken if either is linked otherwise already, or with another reason
     */
    @Transactional
    public boolean link(String kit, String counts, String reason, String evidence) {
        if (kit.equals(counts)) {
            throw new RuleBroken("SAME_KIT", "Kit " + kit + " cannot be a duplicate of itself; name the other kit");
        }
        lines.hold(List.of(kit, counts));
        AnimalView duplicate = animal(kit);
        AnimalView counted = animal(counts);
        if (counts.equals(duplicate.sameAs())) {
            LinkView there = queries.newestLink(kit);
            if (!there.reason().equals(reason) || !there.evidence().equals(evidence)) {
                throw new RuleBroken(
                        "LINKED_ALREADY",
                        "Kit " + kit + " is already the same animal as " + counts + ", said by " + there.byActor()
                                + " with another reason or evidence; undo that link first to say it anew");
            }
            return false;
        }
        if (duplicate.sameAs() != null) {
            throw new RuleBroken(
                    "LINKED_ALREADY",
                    "Kit " + kit + " is already the same animal as " + duplicate.sameAs() + "; undo that link first");
        }
        if (counted.sameAs() != null) {
            throw new RuleBroken(
                    "COUNTED_IS_DUPLICATE",
                    "Kit " + counts + " is itself the same animal as " + counted.sameAs() + "; link to that kit");
        }
        if (!duplicatesOf(kit).isEmpty()) {
            throw new RuleBroken(
                    "HAS_DUPLICATES",
                    "Other kits count as kit " + kit + " (" + String.join(", ", duplicatesOf(kit)) + "); link " + counts
                            + " to it instead, or undo those links first");
        }
        if (!duplicate.facts().species().equals(counted.facts().species())) {
            throw new RuleBroken(
                    "OTHER_SPECIES",
                    "Kit " + kit + " is a " + duplicate.facts().species() + " and kit " + counts + " a "
                            + counted.facts().species() + "; correct the one that is wrong first");
        }
        point(kit, counts, reason, evidence, "SAME_AS");
        return true;
    }

    /**
     * Undoes a link by a new row. The same account may say it again, which changes nothing.
     *
     * @return the kit that counted for it, or empty if the same was said before
     * @throws RuleBroken if the kit is linked to none
     */
    @Transactional
    public Optional<String> unlink(String kit, String reason) {
        lines.hold(List.of(kit));
        String counted = animal(kit).sameAs();
        if (counted == null) {
            LinkView last = queries.newestLink(kit);
            if (last != null
                    && last.reason().equals(reason)
                    && last.byActor().equals(current.get().actor())) {
                return Optional.empty();
            }
            throw new RuleBroken("NOT_LINKED", "Kit " + kit + " is linked to no other kit; there is nothing to undo");
        }
        point(kit, null, reason, null, "SAME_AS_UNDONE");
        return Optional.of(counted);
    }

    private void point(String kit, String counts, String reason, String evidence, String cause) {
        writes.reason(reason);
        writes.link(kit, counts, reason, evidence, current.get().actor(), clock.instant());
        lines.refreshFacts(List.of(kit), cause);
    }

    /** Checks the facts against the rules and the plan; the season of the day of death. */
    private Optional<SeasonView> check(AnimalFacts facts) {
        List<FieldProblem> problems = new ArrayList<>();
        StationView station = known(
                "station",
                facts.station(),
                () -> plan.station(facts.station()),
                () -> plan.stations().stream().map(StationView::code).toList(),
                problems);
        if (facts.unit() != null) {
            known(
                    "managementUnit",
                    facts.unit(),
                    () -> plan.unit(facts.unit()),
                    () -> plan.units().stream().map(UnitView::code).toList(),
                    problems);
        }
        known(
                "species",
                facts.species(),
                () -> plan.species(facts.species()),
                () -> plan.species().stream().map(SpeciesView::code).toList(),
                problems);
        if (station == null) {
            throw InvalidInput.of(problems);
        }
        LocalDate today = LocalDate.ofInstant(clock.instant(), station.zone());
        problems.addAll(AnimalRules.problems(facts, today));
        Optional<SeasonView> season = facts.diedOn() == null ? Optional.empty() : plan.seasonOn(facts.diedOn());
        if (facts.diedOn() != null && season.isEmpty()) {
            problems.add(new FieldProblem(
                    "diedOn",
                    "NO_SEASON",
                    "No season of the plan contains " + facts.diedOn()
                            + "; check the year, or have the coordinator set that season up"));
        }
        if (!problems.isEmpty()) {
            throw InvalidInput.of(problems);
        }
        season.filter(found -> found.state().equals("DRAFT")).ifPresent(found -> {
            throw new RuleBroken(
                    "SEASON_NOT_OPEN",
                    "Season " + found.code() + " is not open for intake yet; the coordinator opens it once its cautions"
                            + " and protocol are reviewed");
        });
        return season;
    }

    private static <T> T known(
            String field,
            String given,
            java.util.function.Supplier<T> find,
            java.util.function.Supplier<List<String>> allowed,
            List<FieldProblem> problems) {
        try {
            return find.get();
        } catch (NotFound unknown) {
            List<String> codes = allowed.get();
            String list = codes.size() <= 40 ? String.join(", ", codes) : codes.size() + " codes, listed by the plan";
            problems.add(new FieldProblem(
                    field,
                    ((DomainException) unknown).code(),
                    "'" + given + "' is not set up; allowed: " + list
                            + (field.equals("managementUnit") ? ", or UNKNOWN" : "")));
            return null;
        }
    }

    private String text(AnimalDetails details) {
        try {
            return json.writeValueAsString(details);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("details are plain values and can be written", e);
        }
    }
}
