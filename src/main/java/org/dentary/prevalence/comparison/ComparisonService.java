package org.dentary.prevalence.comparison;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectReader;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.dentary.plan.PlanService;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.Names;
import org.dentary.prevalence.PrevalenceReport;
import org.dentary.prevalence.PrevalenceService;
import org.dentary.prevalence.answer.StoredAnswerService;
import org.dentary.prevalence.comparison.Comparisons.Multiplicity;
import org.dentary.prevalence.comparison.Comparisons.OtherSeason;
import org.dentary.prevalence.cut.DataCutService;
import org.dentary.prevalence.question.ReportQuestion;

/** Answers whether sexes, age classes and seasons differ, on the animals that the prevalence report counts. */
@ApplicationScoped
public class ComparisonService {
    private final PrevalenceService prevalence;
    private final DataCutService cuts;
    private final PlanService plan;
    private final HerdQueries herds;
    private final Names names;
    private final StoredAnswerService answers;
    private final ObjectReader reader;

    ComparisonService(
            PrevalenceService prevalence,
            DataCutService cuts,
            PlanService plan,
            HerdQueries herds,
            Names names,
            StoredAnswerService answers,
            ObjectMapper json) {
        this.prevalence = prevalence;
        this.cuts = cuts;
        this.plan = plan;
        this.herds = herds;
        this.names = names;
        this.answers = answers;
        this.reader = json.readerFor(Comparisons.class).without(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES);
    }

    /** A question with everything settled that it leaves to the plan; {@code other} is null without another season. */
    record Settled(ComparisonQuestion question, ReportQuestion here, ReportQuestion other) {}

    /**
     * Checks what the question names.
     *
     * @throws InvalidInput if the other season is the same one, or a comparison on a cut names a season that is live
     */
    Settled settle(ComparisonQuestion question) {
        ReportQuestion here = prevalence.settle(question.report());
        if (question.with() == null) {
            return new Settled(question, here, null);
        }
        UUID cut = uuid(question.with());
        String season = cut == null
                ? plan.season(question.with()).code()
                : cuts.require(cut).season();
        if (season.equals(here.season())) {
            throw InvalidInput.field(
                    "with",
                    "SAME_SEASON",
                    "with names season " + season + " itself; its own animals are no other group. Choose another season"
                            + " or a cut of one; for two cuts of one season see /api/v1/data-cuts/{a}/changes");
        }
        if (here.cut() != null && cut == null) {
            throw InvalidInput.field(
                    "with",
                    "NEEDS_A_CUT",
                    "season " + season + " is live and the question stands on a cut, so its answer could not stay the"
                            + " same; give in with the id of a cut of season " + season
                            + " (/api/v1/data-cuts?season=" + season + ")");
        }
        return new Settled(question, here, prevalence.settle(here.inSeason(season, cut)));
    }

    private static UUID uuid(String given) {
        try {
            return UUID.fromString(given);
        } catch (IllegalArgumentException e) {
            return null;
        }
    }

    /** The answer as JSON in RFC 8785 form; on a cut the first one given, for ever. */
    String json(Settled asked) {
        return stored(asked, "application/json", () -> answers.canonical(compare(asked)));
    }

    /** The answer as CSV, made from what JSON tells and kept likewise. */
    String csv(Settled asked) {
        return stored(asked, "text/csv", () -> ComparisonCsv.of(answer(asked)));
    }

    /** The answer; on a cut read back from the first one given. */
    Comparisons answer(Settled asked) {
        if (asked.here().cut() == null) {
            return compare(asked);
        }
        try {
            return reader.readValue(json(asked));
        } catch (JsonProcessingException fault) {
            throw new IllegalStateException("A stored answer is not a comparison", fault);
        }
    }

    /** Why the cut should no longer be used, as of now; null: it may, or there is none. */
    String superseded(ReportQuestion question) {
        return question == null || question.cut() == null
                ? null
                : cuts.require(question.cut()).supersededReason();
    }

    private String stored(Settled asked, String type, java.util.function.Supplier<String> make) {
        return asked.here().cut() == null
                ? make.get()
                : answers.answer(
                        asked.here().cut(), asked.question().canonical(asked.here(), asked.other()), type, make);
    }

    /** The answer, all its numbers of one moment. */
    Comparisons compare(Settled asked) {
        List<PrevalenceReport> reports = prevalence.reports(
                asked.other() == null ? List.of(asked.here()) : List.of(asked.here(), asked.other()));
        PrevalenceReport here = reports.get(0);
        PrevalenceReport there = asked.other() == null ? null : reports.get(1);
        HerdStructure herd = asked.question().herd() == null
                ? null
                : herds.require(asked.question().herd(), here.species());
        double confidence = here.confidence();
        ClassCounts counts = ClassCounts.of(here);
        List<Draft> drafts = new ArrayList<>(SexComparisons.of(counts, confidence));
        drafts.addAll(AgeComparisons.of(counts, asked.question().ages(), confidence));
        if (there != null) {
            drafts.addAll(SeasonComparisons.of(here, there, names::season, confidence));
        }
        if (herd != null) {
            drafts.addAll(SeasonComparisons.standardised(here, there, herd, names::season, confidence));
        }
        return new Comparisons(
                here.season(),
                here.disease(),
                here.species(),
                confidence,
                here.cut(),
                here.asOf(),
                there == null ? null : new OtherSeason(there.season(), there.cut(), there.asOf()),
                herd,
                asked.question().ages(),
                here.scope(),
                here.incomplete() || there != null && there.incomplete(),
                here.cells(),
                there == null ? List.of() : there.cells(),
                Draft.settle(drafts, confidence),
                multiplicity(Draft.tests(drafts), confidence),
                notes(here, there, counts.unknown(), drafts),
                warnings(here, there),
                here.cautions());
    }

    private static Multiplicity multiplicity(int tests, double confidence) {
        String method = "Holm 1979, Scand J Stat 6:65-70";
        return new Multiplicity(
                tests,
                method,
                tests + (tests == 1 ? " test decides" : " tests decide")
                        + " in this answer. Each p stands beside its value"
                        + " adjusted for their number (" + method + "), and a difference is said to be shown only where"
                        + " the adjusted p is below " + Say.level(1 - confidence)
                        + " and the interval leaves out no difference. Other questions asked of the same animals are not"
                        + " counted in.");
    }

    private List<String> notes(PrevalenceReport here, PrevalenceReport there, int unknown, List<Draft> drafts) {
        List<String> notes = new ArrayList<>();
        notes.add("The animals are those that the prevalence report counts, each once.");
        if (unknown > 0) {
            notes.add(unknown + " counted animals of " + names.season(here.season())
                    + " have no known age class or no known sex and are in no comparison between classes.");
        }
        Set<String> methods = new LinkedHashSet<>();
        drafts.forEach(draft -> {
            draft.figures().forEach(figure -> methods.add(figure.method() + ": " + figure.source() + "."));
            draft.tests().forEach(test -> methods.add(test.test() + ": " + test.source() + "."));
        });
        notes.addAll(methods);
        notes.add("A difference between groups of sampled deer says nothing about why they differ.");
        here.notes().stream()
                .filter(note -> !note.equals(PrevalenceReport.NOTHING_TESTED))
                .forEach(notes::add);
        if (there != null) {
            there.notes().stream()
                    .filter(note -> !here.notes().contains(note))
                    .forEach(note -> notes.add(names.season(there.season()) + ": " + note));
        }
        return notes;
    }

    private List<String> warnings(PrevalenceReport here, PrevalenceReport there) {
        List<String> warnings = new ArrayList<>(here.warnings());
        if (there != null) {
            there.warnings().stream()
                    .filter(warning -> !here.warnings().contains(warning))
                    .forEach(warning -> warnings.add(names.season(there.season()) + ": " + warning));
        }
        return warnings;
    }
}
