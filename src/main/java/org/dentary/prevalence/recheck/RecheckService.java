package org.dentary.prevalence.recheck;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.arc.All;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.NotFound;
import org.dentary.prevalence.answer.StoredAnswer;
import org.dentary.prevalence.answer.StoredAnswerService;
import org.dentary.prevalence.answer.StoredReport;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/**
 * Computes every stored answer again and keeps what it found. After an upgrade it does so by itself, once a release; the
 * answers stay as they were sent, whatever it finds.
 */
@ApplicationScoped
public class RecheckService {
    private static final Logger LOG = Logger.getLogger(RecheckService.class);
    private static final TypeReference<Map<String, Object>> QUESTION = new TypeReference<>() {};

    private final RecheckQueries queries;
    private final StoredAnswerService stored;
    private final List<StoredReport> kinds;
    private final CurrentAccount account;
    private final ObjectMapper json;
    private final Clock clock;
    private final String release;

    RecheckService(
            RecheckQueries queries,
            StoredAnswerService stored,
            @All List<StoredReport> kinds,
            CurrentAccount account,
            ObjectMapper json,
            Clock clock,
            @ConfigProperty(name = "quarkus.application.version") String version) {
        this.queries = queries;
        this.stored = stored;
        this.kinds = kinds;
        this.account = account;
        this.json = json;
        this.clock = clock;
        this.release = version + ", rules of reports " + StoredAnswerService.RULE_VERSION;
    }

    /** What a check found, and whether it was made now. */
    record Made(RecheckView check, boolean fresh) {}

    /** Checks under an id of the client's; the same id again answers what was found then. */
    Made put(UUID id) {
        return queries.find(id)
                .map(check -> new Made(check, false))
                .orElseGet(() -> new Made(check(id, account.get().actor()), true));
    }

    /** Checks once after each upgrade, a while after the start so that people are served first. */
    @Scheduled(
            every = "{dentary.recheck.every}",
            delayed = "{dentary.recheck.delay}",
            concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    void afterAnUpgrade() {
        if (!queries.isDone(release)) {
            RecheckView check = check(UUID.randomUUID(), "service");
            if (check.moved() > 0) {
                LOG.warnf("%d numbers of stored answers moved; /data-cuts/rechecks names them", check.moved());
            }
        }
    }

    /** Newest first, without the figures. */
    List<RecheckView> all() {
        return queries.all();
    }

    RecheckView require(UUID id) {
        return queries.find(id)
                .orElseThrow(() -> new NotFound(
                        "RECHECK_UNKNOWN", "There is no check " + id + "; /api/v1/data-cuts/rechecks lists them"));
    }

    /** Each answer is computed in a snapshot of its own, and what was found kept at the end: years of answers take a while. */
    private RecheckView check(UUID id, String by) {
        List<RecheckQueries.Found> found = new ArrayList<>();
        int unchecked = 0;
        List<StoredAnswer.Key> answers = stored.keys();
        for (StoredAnswer.Key key : answers) {
            StoredAnswer answer = stored.one(key);
            Optional<List<AnswerRules.Moved>> moved = moved(answer);
            if (moved.isEmpty()) {
                unchecked++;
            }
            moved.ifPresent(figures -> figures.forEach(figure ->
                    found.add(new RecheckQueries.Found(answer.cut(), answer.question(), answer.mediaType(), figure))));
        }
        int passedOver = unchecked;
        QuarkusTransaction.requiringNew()
                .run(() -> queries.insert(
                        id, release, by, clock.instant(), answers.size() - passedOver, passedOver, found));
        return queries.find(id).orElseThrow();
    }

    /** The numbers that moved; empty where no kind of report answers that question any more. */
    private Optional<List<AnswerRules.Moved>> moved(StoredAnswer answer) {
        List<AnswerRules.Moved> moved = new ArrayList<>();
        String digest = StoredAnswerService.digest(answer.answer());
        if (!digest.equals(answer.digest())) {
            moved.add(new AnswerRules.Moved("the stored bytes (SHA-256)", answer.digest(), digest));
        }
        try {
            Map<String, Object> question = json.readValue(answer.question(), QUESTION);
            Optional<StoredReport> kind =
                    kinds.stream().filter(one -> one.answers(question)).findFirst();
            if (kind.isEmpty()) {
                return moved.isEmpty() ? Optional.empty() : Optional.of(moved);
            }
            String again = kind.get().again(question, UUID.fromString(answer.cut()), answer.mediaType());
            moved.addAll(
                    answer.mediaType().equals("text/csv")
                            ? AnswerRules.movedCsv(answer.answer(), again)
                            : AnswerRules.moved(json.readTree(answer.answer()), json.readTree(again)));
        } catch (JsonProcessingException fault) {
            moved.add(new AnswerRules.Moved("the whole answer: it cannot be read", null, null));
        } catch (DomainException fault) {
            moved.add(new AnswerRules.Moved("the whole answer: " + fault.getMessage(), null, null));
        }
        return Optional.of(moved);
    }
}
