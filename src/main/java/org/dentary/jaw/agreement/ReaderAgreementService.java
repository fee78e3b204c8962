package org.dentary.jaw.agreement;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.jaw.agreement.ReaderAgreement.Group;
import org.dentary.jaw.key.AgeClass;
import org.dentary.people.PeopleService;
import org.dentary.people.PersonView;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.Role;
import org.dentary.platform.problem.NotAllowed;
import org.dentary.platform.problem.NotFound;
import org.dentary.statistics.agreement.Agreement;

/** Tells how a reader agrees with others: never with an age that the reader's own reading decided. */
@ApplicationScoped
public class ReaderAgreementService {
    private static final List<String> CLASSES =
            List.of(AgeClass.FAWN.name(), AgeClass.YEARLING.name(), AgeClass.ADULT.name());
    private static final double CONFIDENCE = 0.95;
    private static final List<String> NOTES = List.of(
            "Compared are single readings with single readings, never with the age that stands.",
            "With other persons a pair counts where the later reading was blind; unknown classes make no pair.",
            "Jaws drawn by lot tell how the reader reads. Jaws that a rule or a person chose for a second reading are harder by"
                    + " choice, and kept apart.",
            "Of a jaw of the panel the first answer counts: a later one may be remembered.",
            "Bias is the other's class less this reader's, in classes: above 0, this reader reads younger.");

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
     * @param asking who wants to know; a sampler only of themselves
     * @param season season code; null for all
     * @throws NotFound if the person is neither on the roster nor a reader, or the season is unknown
     * @throws NotAllowed if a sampler asks of somebody else
     */
    public ReaderAgreement of(Account asking, String person, String season) {
        if (asking.role() == Role.SAMPLER && !person.equals(asking.actor())) {
            throw new NotAllowed("OTHER_READER", "A sampler reads only their own agreement");
        }
        String name = name(person)
                .or(() -> queries.readers(person).stream().findFirst().map(ReaderAgreementQueries.Reader::person))
                .orElseThrow(() -> new NotFound(
                        "PERSON_UNKNOWN", "No person '" + person + "' is on the roster or has read a jaw"));
        if (season != null) {
            plan.season(season);
        }
        List<ReaderAgreementQueries.Pair> all = queries.pairs(person);
        List<ReaderAgreementQueries.Pair> pairs = all.stream()
                .filter(pair -> season == null || pair.season().equals(season))
                .toList();
        return new ReaderAgreement(
                person,
                name,
                season,
                CLASSES,
                compared(pairs, Group.DRAWN),
                compared(pairs, Group.PANEL),
                compared(pairs, Group.KNOWN_AGE),
                compared(pairs, Group.REFERRED),
                seasons(all),
                NOTES);
    }

    /** Every reader by code, as far as who asks may know: a sampler finds themselves alone. */
    public List<ReaderSummary> all(Account asking) {
        String only = asking.role() == Role.SAMPLER ? asking.actor() : null;
        Map<String, List<ReaderAgreementQueries.Pair>> pairs =
                queries.pairs(only).stream().collect(Collectors.groupingBy(ReaderAgreementQueries.Pair::person));
        Map<String, String> names =
                people.persons().stream().collect(Collectors.toMap(PersonView::code, PersonView::name));
        return queries.readers(only).stream()
                .map(reader -> {
                    List<ReaderAgreementQueries.Pair> own = pairs.getOrDefault(reader.person(), List.of());
                    return new ReaderSummary(
                            reader.person(),
                            names.getOrDefault(reader.person(), reader.person()),
                            reader.readings(),
                            compared(own, Group.DRAWN).agreement(),
                            compared(own, Group.PANEL).agreement(),
                            compared(own, Group.KNOWN_AGE).agreement());
                })
                .toList();
    }

    private Optional<String> name(String person) {
        return people.persons().stream()
                .filter(one -> one.code().equals(person))
                .map(PersonView::name)
                .findFirst();
    }

    private List<ReaderAgreement.OfSeason> seasons(List<ReaderAgreementQueries.Pair> pairs) {
        return Stream.concat(queries.seasons().stream(), Stream.of(""))
                .flatMap(season -> {
                    List<ReaderAgreementQueries.Pair> ofSeason = pairs.stream()
                            .filter(pair -> pair.season().equals(season))
                            .toList();
                    return Stream.of(Group.values())
                            .map(group -> new ReaderAgreement.OfSeason(
                                    season, group, compared(ofSeason, group).agreement()));
                })
                .filter(line -> line.agreement().animals() > 0)
                .toList();
    }

    private static ReaderAgreement.Compared compared(List<ReaderAgreementQueries.Pair> pairs, Group group) {
        List<List<Integer>> counts = new ArrayList<>();
        for (String mine : CLASSES) {
            counts.add(CLASSES.stream()
                    .map(other -> pairs.stream()
                            .filter(pair -> pair.compared().equals(group.name())
                                    && pair.mine().equals(mine)
                                    && pair.other().equals(other))
                            .mapToInt(ReaderAgreementQueries.Pair::animals)
                            .sum())
                    .toList());
        }
        return new ReaderAgreement.Compared(counts, Agreement.of(counts, CONFIDENCE));
    }
}
