package org.dentary.prevalence.ageing;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.dentary.jaw.agreement.KnownAgeService;
import org.dentary.plan.PlanClock;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.Names;
import org.dentary.prevalence.PrevalenceReport;
import org.dentary.prevalence.PrevalenceService;
import org.dentary.prevalence.cut.DataCutService;
import org.dentary.statistics.Misclassification;

/** Answers how the age pattern of the animals that a prevalence report counts would change under an ageing error. */
@ApplicationScoped
public class AgeingService {
    /** Beyond this a matrix tells nothing of these counts; our own bound, no source. */
    static final double MOST_CONDITION = 50;

    private final PrevalenceService prevalence;
    private final ErrorMatrixQueries matrices;
    private final KnownAgeService knownAge;
    private final DataCutService cuts;
    private final Names names;
    private final PlanClock zone;
    private final Clock clock;

    AgeingService(
            PrevalenceService prevalence,
            ErrorMatrixQueries matrices,
            KnownAgeService knownAge,
            DataCutService cuts,
            Names names,
            PlanClock zone,
            Clock clock) {
        this.prevalence = prevalence;
        this.matrices = matrices;
        this.knownAge = knownAge;
        this.cuts = cuts;
        this.names = names;
        this.zone = zone;
        this.clock = clock;
    }

    /** The question with everything settled that it leaves to the plan. */
    AgeingQuestion settle(AgeingQuestion question) {
        return new AgeingQuestion(prevalence.settle(question.report()), question.matrix());
    }

    /**
     * The answer.
     *
     * @param question settled
     * @throws InvalidInput if there is no such matrix, it is of another species, a known-age class has no reading, or the
     *     matrix hardly tells its classes apart
     */
    AgeingWhatIf answer(AgeingQuestion question) {
        ErrorMatrix matrix = matrix(question);
        Map<String, Double> condition = condition(matrix);
        PrevalenceReport here = prevalence.report(question.report());
        List<AgePattern> patterns = AgePatterns.of(here.cells(), matrix);
        return new AgeingWhatIf(
                AgeingWhatIf.LABEL,
                "What-if: " + names.disease(here.disease()) + " by age class, " + names.season(here.season())
                        + ", if jaws were misread as “" + matrix.name() + "” says",
                here.season(),
                here.disease(),
                here.species(),
                here.cut(),
                here.asOf(),
                here.scope(),
                here.incomplete(),
                matrix,
                condition,
                patterns,
                AgeingWords.sentences(patterns, matrix),
                AgeingWords.assumptions(matrix),
                AgeingWords.notes(here),
                AgeingWords.warnings(
                        here,
                        matrix,
                        patterns,
                        condition.values().stream()
                                .mapToDouble(Double::doubleValue)
                                .max()
                                .orElse(1)),
                here.cautions());
    }

    private ErrorMatrix matrix(AgeingQuestion question) {
        String species = question.report().species();
        if (question.matrix().equals(ErrorMatrix.KNOWN_AGE)) {
            Instant until = question.report().cut() == null
                    ? clock.instant()
                    : cuts.require(question.report().cut()).madeAt();
            return ErrorMatrixRules.knownAge(knownAge.readings(species, until), zone.day(until));
        }
        List<ErrorMatrix> all = matrices.all();
        ErrorMatrix matrix = all.stream()
                .filter(one -> one.code().equals(question.matrix()))
                .findFirst()
                .orElseThrow(() -> InvalidInput.field(
                        "matrix",
                        "MATRIX_UNKNOWN",
                        "'" + question.matrix() + "' is no ageing-error matrix; allowed: "
                                + all.stream().map(one -> one.code() + ", ").collect(Collectors.joining())
                                + ErrorMatrix.KNOWN_AGE
                                + (all.isEmpty() ? "; the coordinator imports others as ageing-error-matrices" : "")));
        if (!matrix.species().equals(species)) {
            throw InvalidInput.field(
                    "matrix",
                    "MATRIX_OF_ANOTHER_SPECIES",
                    "matrix '" + matrix.code() + "' is of " + matrix.species() + ", the animals are " + species
                            + "; choose a matrix of that species");
        }
        return matrix;
    }

    private static Map<String, Double> condition(ErrorMatrix matrix) {
        Map<String, Double> conditions = new TreeMap<>();
        for (ErrorMatrix.Table table : matrix.tables()) {
            double condition = Misclassification.of(ErrorMatrix.shares(table)).condition();
            if (condition > MOST_CONDITION) {
                throw InvalidInput.field(
                        "matrix",
                        "CLASSES_READ_ALIKE",
                        "by matrix " + matrix.code() + " jaws of different true classes are read "
                                + (Double.isInfinite(condition)
                                        ? "alike"
                                        : String.format(Locale.ROOT, "nearly alike (condition %.0f)", condition))
                                + ", so nothing follows from how these were read; choose another matrix");
            }
            conditions.put(table.sex(), Math.round(condition * 1e6) / 1e6);
        }
        return conditions;
    }
}
