package org.dentary.jaw.practice;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.math.BigDecimal;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import org.dentary.jaw.key.AgeClass;
import org.dentary.jaw.key.JawKey;
import org.dentary.jaw.photo.JawPhotoService;
import org.dentary.jaw.photo.JawPhotoView;
import org.dentary.plan.PlanClock;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.account.Role;
import org.dentary.platform.problem.NotAllowed;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;

/**
 * Rounds of practice: jaws of the panel in a random order, those first that the person has met least; the class is asked, and
 * told only when all are answered.
 */
@ApplicationScoped
public class PracticeService {
    private static final int SHOWN = 200;

    private final PracticeQueries queries;
    private final PracticeWrites writes;
    private final PracticeAnswers answers;
    private final JawPhotoService photos;
    private final PlanService plan;
    private final PlanClock planClock;
    private final CurrentAccount current;
    private final Clock clock;
    private final Random random = new SecureRandom();

    PracticeService(
            PracticeQueries queries,
            PracticeWrites writes,
            PracticeAnswers answers,
            JawPhotoService photos,
            PlanService plan,
            PlanClock planClock,
            CurrentAccount current,
            Clock clock) {
        this.queries = queries;
        this.writes = writes;
        this.answers = answers;
        this.photos = photos;
        this.plan = plan;
        this.planClock = planClock;
        this.current = current;
        this.clock = clock;
    }

    /**
     * What the plan asks of readers.
     *
     * @param needed share of a round's jaws to be classed rightly, in [0, 1]; 0 asks for no practice
     * @param rules the rules in force; a score under others does not count
     */
    public record Demand(BigDecimal needed, int jaws, String rules) {
        public boolean isMade() {
            return needed.signum() > 0;
        }

        /** The share needed in percent. */
        public String getPercent() {
            return needed.movePointRight(2).stripTrailingZeros().toPlainString() + " %";
        }
    }

    /** What the plan asks everywhere in the season that runs. */
    Demand demand() {
        String season = season();
        return new Demand(
                plan.settings().share(PlanSetting.PRACTICE_SCORE_NEEDED, season, null, null),
                plan.settings().wholeNumber(PlanSetting.PRACTICE_ROUND_JAWS, null, null, null),
                JawKey.RULE_SET_VERSION);
    }

    /**
     * Begins a round of the person who asks. Sent again it changes nothing.
     *
     * @return whether it is new
     * @throws NotAllowed if the id is somebody else's round
     */
    @Transactional
    boolean begin(UUID id) {
        String person = current.get().actor();
        var there = queries.round(id);
        if (there.isPresent()) {
            requireOwn(there.get());
            return false;
        }
        writes.begin(id, person, season(), JawKey.RULE_SET_VERSION, chosen(person, demand().jaws()), clock.instant());
        return true;
    }

    /** At most half of a round are photos, so that every round also holds drawn jaws, whose every cue is certain. */
    private List<PracticeWrites.Put> chosen(String person, int jaws) {
        List<PracticeQueries.Candidate> references =
                leastMet(queries.candidates(person), PracticeQueries.Candidate::asked);
        Map<String, Integer> met = queries.askedDrawn(person).stream()
                .collect(Collectors.toMap(row -> (String) row[0], row -> ((Number) row[1]).intValue()));
        List<String> drawn = leastMet(DrawnJaws.names(), name -> met.getOrDefault(name, 0));
        List<PracticeWrites.Put> put = new ArrayList<>();
        references.stream()
                .limit(jaws / 2)
                .map(one -> new PracticeWrites.Put(one.id(), one.kind(), one.ageClass()))
                .forEach(put::add);
        drawn.stream()
                .limit(jaws - put.size())
                .map(name -> new PracticeWrites.Put(
                        name,
                        PracticeView.JawKind.DRAWN.name(),
                        answers.drawn(name).ageClass().name()))
                .forEach(put::add);
        Collections.shuffle(put, random);
        return put;
    }

    private <T> List<T> leastMet(List<T> all, ToIntFunction<T> met) {
        List<T> mixed = new ArrayList<>(all);
        Collections.shuffle(mixed, random);
        mixed.sort(Comparator.comparingInt(met));
        return mixed;
    }

    /**
     * Keeps the class given for a jaw. The same again changes nothing.
     *
     * @throws RuleBroken if another class was given for it already
     * @throws NotFound if the round has no such jaw
     */
    @Transactional
    void answer(UUID round, int position, AgeClass given) {
        writes.lock(round);
        requireOwn(row(round));
        PracticeQueries.JawRow jaw = queries.jaws(round).stream()
                .filter(one -> one.position() == position)
                .findFirst()
                .orElseThrow(() -> new NotFound("JAW_UNKNOWN", "This round has no jaw " + position));
        if (given.name().equals(jaw.givenClass())) {
            return;
        }
        if (jaw.givenClass() != null) {
            throw new RuleBroken(
                    "ANSWERED_ALREADY",
                    "Jaw " + position + " was called " + jaw.givenClass() + "; an answer is not changed once given");
        }
        writes.answer(round, position, given.name(), clock.instant());
    }

    /**
     * A round: one's own, or a finished one for whoever may see everyone's agreement.
     *
     * @throws NotAllowed if it is not for who asks
     */
    public PracticeView round(UUID id) {
        PracticeQueries.RoundRow row = row(id);
        Account account = current.get();
        if (!row.person().equals(account.actor()) && (account.role() == Role.SAMPLER || row.finishedAt() == null)) {
            throw othersRound();
        }
        Map<String, PracticeQueries.ReferenceRow> references = queries.referencesOf(id).stream()
                .collect(Collectors.toMap(PracticeQueries.ReferenceRow::id, one -> one));
        List<PracticeView.Jaw> jaws = queries.jaws(id).stream()
                .map(jaw -> row.finishedAt() == null
                        ? answers.blinded(id, jaw, pictures(id, jaw, references))
                        : answers.told(jaw, references.get(jaw.jaw()), pictures(id, jaw, references)))
                .toList();
        return view(row, jaws);
    }

    /** Rounds without their jaws, newest first, at most 200: one's own, everybody's for who may see them. */
    public List<PracticeView> rounds() {
        Account account = current.get();
        return queries.rounds(account.role() == Role.SAMPLER ? account.actor() : null, SHOWN).stream()
                .map(row -> view(row, List.of()))
                .toList();
    }

    /** The best score of the person who asks under the rules in force, in [0, 1]; null without a finished round. */
    public Double best() {
        return queries.rounds(current.get().actor(), SHOWN).stream()
                .filter(row -> row.finishedAt() != null && row.ruleSetVersion().equals(JawKey.RULE_SET_VERSION))
                .map(row -> (double) row.rightAnswers() / row.jaws())
                .max(Comparator.naturalOrder())
                .orElse(null);
    }

    /**
     * A photo of a jaw in the round, under an address that tells nothing of the animal.
     *
     * @param number counted from 1
     */
    byte[] photo(UUID round, int position, int number) {
        requireOwn(row(round));
        PracticeQueries.JawRow jaw = queries.jaws(round).stream()
                .filter(one -> one.position() == position)
                .findFirst()
                .orElseThrow(PracticeService::noPhoto);
        PracticeQueries.ReferenceRow reference = queries.referencesOf(round).stream()
                .filter(one -> one.id().equals(jaw.jaw()))
                .findFirst()
                .orElseThrow(PracticeService::noPhoto);
        List<JawPhotoView> there = photos.ofKit(reference.kit());
        if (number < 1 || number > there.size()) {
            throw noPhoto();
        }
        return photos.picture(
                reference.kit(), UUID.fromString(there.get(number - 1).id()), false);
    }

    private List<PracticeView.Picture> pictures(
            UUID round, PracticeQueries.JawRow jaw, Map<String, PracticeQueries.ReferenceRow> references) {
        PracticeQueries.ReferenceRow reference = references.get(jaw.jaw());
        if (reference == null) {
            return DrawnJaws.cues(jaw.jaw()).stream()
                    .map(cue -> new PracticeView.Picture(
                            "/jaw-drawings/" + cue.drawing().name() + ".svg",
                            cue.place(),
                            cue.drawing().description(),
                            cue.drawing().width(),
                            cue.drawing().height()))
                    .toList();
        }
        List<PracticeView.Picture> pictures = new ArrayList<>();
        for (JawPhotoView photo : photos.ofKit(reference.kit())) {
            int number = pictures.size() + 1;
            pictures.add(new PracticeView.Picture(
                    "/api/v1/practice-rounds/" + round + "/jaws/" + jaw.position() + "/photos/" + number,
                    "Photo " + number,
                    "Photo " + number + " of jaw " + jaw.position(),
                    photo.width(),
                    photo.height()));
        }
        return pictures;
    }

    private static PracticeView view(PracticeQueries.RoundRow row, List<PracticeView.Jaw> jaws) {
        return new PracticeView(
                row.id(),
                row.person(),
                row.ruleSetVersion(),
                row.jaws(),
                row.answered(),
                row.rightAnswers(),
                row.begunAt(),
                row.finishedAt(),
                jaws);
    }

    private PracticeQueries.RoundRow row(UUID id) {
        return queries.round(id).orElseThrow(() -> new NotFound("ROUND_UNKNOWN", "No round of practice " + id));
    }

    private void requireOwn(PracticeQueries.RoundRow row) {
        if (!row.person().equals(current.get().actor())) {
            throw othersRound();
        }
    }

    private static NotAllowed othersRound() {
        return new NotAllowed("OTHERS_ROUND", "This round of practice is somebody else's");
    }

    private static NotFound noPhoto() {
        return new NotFound("PHOTO_UNKNOWN", "This jaw has no such photo, or no longer");
    }

    private String season() {
        return plan.seasonOn(planClock.day(clock.instant()))
                .map(SeasonView::code)
                .orElse(null);
    }
}
