package org.dentary.prevalence.saved;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.net.URI;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;
import org.dentary.prevalence.PrevalenceService;
import org.dentary.prevalence.cut.DataCutService;
import org.dentary.prevalence.question.Beside;
import org.dentary.prevalence.question.ReportQuestion;

/** Keeps questions by name and says where each is asked again. */
@ApplicationScoped
public class SavedQuestionService {
    private static final String BESIDE = Beside.PARAMETER + "=";
    private static final String RESOURCE = "saved question";

    private final SavedQuestionQueries queries;
    private final PrevalenceService prevalence;
    private final DataCutService cuts;
    private final RepeatableRequests requests;
    private final CurrentAccount account;
    private final Clock clock;
    private final EntityManager entities;

    SavedQuestionService(
            SavedQuestionQueries queries,
            PrevalenceService prevalence,
            DataCutService cuts,
            RepeatableRequests requests,
            CurrentAccount account,
            Clock clock,
            EntityManager entities) {
        this.queries = queries;
        this.prevalence = prevalence;
        this.cuts = cuts;
        this.requests = requests;
        this.account = account;
        this.clock = clock;
        this.entities = entities;
    }

    /** What was kept, and whether it is new. */
    record Made(SavedQuestionView question, boolean fresh) {}

    /**
     * Keeps a question, or with {@code If-Match} changes or withdraws it. What the address leaves to the plan is filled in,
     * so that a later change of the plan does not change what the name means.
     *
     * @throws RuleBroken (409) if another question offered has that name
     * @throws org.dentary.platform.problem.InvalidInput if the query is no question, naming what to change
     */
    @Transactional
    Made put(UUID id, SaveQuestion command, String ifMatch) {
        SavedQuestionView present = queries.find(id).orElse(null);
        Seen seen =
                requests.compare(RESOURCE, id.toString(), command, ifMatch, present == null ? null : present.version());
        if (seen == Seen.REPLAY) {
            return new Made(present, false);
        }
        Map<String, List<String>> asked = parameters(command.query());
        asked.remove("cut");
        asked.computeIfPresent(Beside.PARAMETER, (name, beside) -> seasons(beside));
        ReportQuestion question = prevalence.settle(ReportQuestion.of(asked));
        boolean withdrawn = Boolean.TRUE.equals(command.withdrawn());
        String name = command.name().trim();
        if (!withdrawn && queries.isTaken(name, id)) {
            throw new RuleBroken(
                    "NAME_TAKEN", "a question named '" + name + "' is kept already; take another name or withdraw it");
        }
        String query = question.query().replaceFirst("^season=[^&]*&", "");
        if (seen == Seen.NEW) {
            queries.insert(id, name, question.season(), query, account.get().actor(), clock.instant());
        } else {
            queries.update(id, name, question.season(), query, withdrawn);
        }
        requests.accept(RESOURCE, id.toString(), command);
        entities.flush();
        return new Made(require(id), seen == Seen.NEW);
    }

    /** The questions offered, by name. */
    List<SavedQuestionView> offered() {
        return queries.offered();
    }

    SavedQuestionView require(UUID id) {
        return queries.find(id)
                .orElseThrow(() -> new NotFound(
                        "QUESTION_UNKNOWN", "No question " + id + " is kept; /api/v1/saved-questions lists them"));
    }

    /**
     * Where the question is answered: on the cut and its season, or without one on the lines of the season it was asked of. On
     * a cut, a season beside it stands on its newest cut that holds good.
     *
     * @param at {@code /prevalence} or {@code /api/v1/prevalence}
     * @throws InvalidInput if the question is asked of a cut and a season beside it has none
     */
    URI answeredAt(String at, UUID id, UUID cut) {
        SavedQuestionView question = require(id);
        if (cut == null) {
            return URI.create(at + "?season=" + encoded(question.season()) + "&" + question.query());
        }
        String season = cuts.require(cut).season();
        return URI.create(at + "?season=" + encoded(season) + "&" + onCuts(question.query(), season) + "&cut=" + cut);
    }

    /** The seasons beside a question, where it names cuts of them. */
    private List<String> seasons(List<String> beside) {
        return besides(String.join(",", beside))
                .map(one -> {
                    try {
                        return cuts.require(UUID.fromString(one)).season();
                    } catch (IllegalArgumentException season) {
                        return one;
                    }
                })
                .toList();
    }

    private String onCuts(String query, String own) {
        return Arrays.stream(query.split("&"))
                .map(part -> part.startsWith(BESIDE)
                        ? BESIDE
                                + besides(decoded(part.substring(BESIDE.length())))
                                        .map(season -> newestCut(season, own))
                                        .collect(Collectors.joining(","))
                        : part)
                .collect(Collectors.joining("&"));
    }

    private String newestCut(String season, String own) {
        if (season.equals(own)) {
            throw InvalidInput.field(
                    "cut",
                    "SAME_SEASON",
                    "the question puts season " + season
                            + " beside, which is the cut's own; ask it of a cut of another season");
        }
        return cuts.all(season).stream()
                .filter(one -> one.supersededReason() == null)
                .reduce((earlier, later) -> later)
                .map(one -> one.id().toString())
                .orElseThrow(() -> InvalidInput.field(
                        "cut",
                        "NEEDS_A_CUT",
                        "the question puts season " + season
                                + " beside, and no data cut of that season holds good; make one, or"
                                + " ask the question of the lines as they are"));
    }

    private static Stream<String> besides(String given) {
        return Arrays.stream(given.split(",")).map(String::trim).filter(one -> !one.isEmpty());
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    private static Map<String, List<String>> parameters(String query) {
        Map<String, List<String>> parameters = new LinkedHashMap<>();
        for (String part : query.trim().replaceFirst("^[^?]*\\?", "").split("&")) {
            String[] pair = part.split("=", 2);
            String value = pair.length == 1 ? "" : decoded(pair[1]);
            if (!value.isBlank()) {
                parameters
                        .computeIfAbsent(decoded(pair[0]), name -> new ArrayList<>())
                        .add(value);
            }
        }
        return parameters;
    }

    private static String decoded(String part) {
        try {
            return URLDecoder.decode(part, StandardCharsets.UTF_8);
        } catch (IllegalArgumentException e) {
            throw InvalidInput.field(
                    "query",
                    "MALFORMED",
                    "'" + part + "' is no part of an address: behind each % stand two of 0-9 and A-F; copy what stands"
                            + " behind the question mark of a prevalence address");
        }
    }
}
