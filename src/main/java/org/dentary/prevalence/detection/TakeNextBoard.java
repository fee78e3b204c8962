package org.dentary.prevalence.detection;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.dentary.platform.problem.InvalidInput;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * What to take next as a page shows it that everybody opens all day: counted at most once in a while, as the count goes over
 * every line of every season. Who needs it of this moment asks {@link ChanceService#takeNext}.
 */
@ApplicationScoped
public class TakeNextBoard {
    private final ChanceService chances;
    private final Clock clock;
    private final Duration kept;
    private final Map<String, Board> boards = new ConcurrentHashMap<>();

    TakeNextBoard(ChanceService chances, Clock clock, @ConfigProperty(name = "dentary.take-next.kept") Duration kept) {
        this.chances = chances;
        this.clock = clock;
        this.kept = kept;
    }

    /**
     * The list as it was counted.
     *
     * @param items empty too where the plan does not allow the figures; the report says why
     * @param asOf when it was counted
     */
    public record Board(List<TakeNext> items, Instant asOf) {}

    /** The list of a season, not older than the service's setting {@code dentary.take-next.kept}. */
    public Board of(String season) {
        Instant now = clock.instant();
        return boards.compute(
                season,
                (code, board) ->
                        board == null || !board.asOf().plus(kept).isAfter(now) ? new Board(items(code), now) : board);
    }

    /** How old a list can be, in whole minutes. */
    public long keptMinutes() {
        return kept.toMinutes();
    }

    private List<TakeNext> items(String season) {
        try {
            return chances.takeNext(season);
        } catch (InvalidInput notNow) {
            return List.of();
        }
    }
}
