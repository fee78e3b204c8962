package org.dentary.jaw;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import org.dentary.people.PeopleService;
import org.dentary.plan.PlanService;
import org.dentary.statistics.Agreement;

/** Tells how a reader agrees with others: never with an age that the reader's own reading decided. */
@ApplicationScoped
public class ReaderAgreementService {
    private static final List<String> CLASSES =
            List.of(AgeClass.FAWN.name(), AgeClass.YEARLING.name(), AgeClass.ADULT.name());
    private static final double CONFIDENCE = 0.95;
    private static final List<String> NOTES = List.of(
            "Compared are single readings with single readings, never with the age that stands.",
            "With other persons a pair counts where the later reading was blind; unknown classes make no pair.",
            "Referred jaws are harder by choice and are kept apart.",
            "Bias is the other's class less this reader's, in classes.");

    private final ReaderAgreementQueries queries;
    private final PeopleService people;
    private final PlanService plan;

    ReaderAgreementService(ReaderAgreementQueries queries, PeopleService people, PlanService plan) {
        this.queries = queries;
        this.people = people;
        this.plan = plan;
    }

    /**
     * The agreement of one reader.
     *
     * @param season season code; null for all
     * @throws org.dentary.platform.problem.NotFound if the person or season is unknown
     */
    public ReaderAgreement of(String person, String season) {
        people.person(person);
        if (season != null) {
            plan.season(season);
        }
        List<ReaderAgreementQueries.Pair> pairs = queries.pairs(person, season);
        return new ReaderAgreement(
                person,
                season,
                CLASSES,
                compared(pairs, "DRAWN"),
                compared(pairs, "REFERRED"),
                compared(pairs, "KNOWN_AGE"),
                NOTES);
    }

    private static ReaderAgreement.Compared compared(List<ReaderAgreementQueries.Pair> pairs, String what) {
        List<List<Integer>> counts = new ArrayList<>();
        for (String mine : CLASSES) {
            counts.add(CLASSES.stream()
                    .map(other -> pairs.stream()
                            .filter(pair -> pair.compared().equals(what)
                                    && pair.mine().equals(mine)
                                    && pair.other().equals(other))
                            .mapToInt(ReaderAgreementQueries.Pair::animals)
                            .sum())
                    .toList());
        }
        return new ReaderAgreement.Compared(counts, Agreement.of(counts, CONFIDENCE));
    }
}
