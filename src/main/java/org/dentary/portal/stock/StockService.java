package org.dentary.portal.stock;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.dentary.kit.AccountForKits;
import org.dentary.kit.BlockService;
import org.dentary.kit.BlockView;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.plan.StationView;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.PlanSettings;
import org.dentary.platform.database.Snapshot;

/** How kits add up: by block, and by station and season. A sampler sees the stations they serve. */
@ApplicationScoped
public class StockService {
    private final BlockService blocks;
    private final StockQueries queries;
    private final PlanService plan;
    private final Snapshot snapshot;
    private final Clock clock;

    StockService(BlockService blocks, StockQueries queries, PlanService plan, Snapshot snapshot, Clock clock) {
        this.blocks = blocks;
        this.queries = queries;
        this.plan = plan;
        this.snapshot = snapshot;
        this.clock = clock;
    }

    /** One block's tally; refused like the block itself. */
    public BlockTally tally(UUID block) {
        blocks.block(block);
        return queries.tallies(List.of(block)).get(0);
    }

    /** The tallies of some blocks, by block. */
    Map<UUID, BlockTally> tallies(List<BlockView> some) {
        List<UUID> ids = some.stream().map(BlockView::id).toList();
        return ids.isEmpty()
                ? Map.of()
                : queries.tallies(ids).stream().collect(Collectors.toMap(BlockTally::block, Function.identity()));
    }

    /** Streams every visible block's tally, newest first. */
    void tallies(Consumer<BlockTally> each) {
        Optional<List<String>> stations = blocks.seen();
        snapshot.stream(() -> queries.tallies(stations, Optional.empty()), each);
    }

    /**
     * By station in set-up order and season, oldest first. A station without blocks is left out, but of the season that
     * takes animals in today: there it has no kit, and is low.
     */
    public List<StationStock> stations() {
        return stations(plan.seasons(), true);
    }

    /** The same for the seasons that are not closed, whose kits still count. */
    public List<StationStock> stationsNow() {
        return stations(
                plan.seasons().stream()
                        .filter(season -> !season.state().equals("CLOSED"))
                        .toList(),
                false);
    }

    /** The same for one season. */
    List<StationStock> stationsOf(SeasonView season) {
        return stations(List.of(season), false);
    }

    /**
     * Says what became of kits that were not used.
     *
     * @see BlockService#account
     */
    public void account(UUID block, AccountForKits account) {
        blocks.account(block, account, queries::used);
    }

    @SuppressWarnings("unchecked")
    private List<StationStock> stations(List<SeasonView> seasons, boolean all) {
        Optional<List<String>> seen = blocks.seen();
        List<BlockTally> tallies = queries.tallies(
                        seen,
                        all
                                ? Optional.empty()
                                : Optional.of(
                                        seasons.stream().map(SeasonView::code).toList()))
                .getResultList();
        Map<String, Map<String, List<BlockTally>>> byStation = tallies.stream()
                .collect(Collectors.groupingBy(BlockTally::station, Collectors.groupingBy(BlockTally::season)));
        PlanSettings settings = plan.settings();
        List<StationStock> stock = new ArrayList<>();
        for (StationView station : plan.stations()) {
            if (seen.isPresent() && !seen.get().contains(station.code())) {
                continue;
            }
            Map<String, List<BlockTally>> bySeason = byStation.getOrDefault(station.code(), Map.of());
            for (SeasonView season : seasons) {
                boolean takesIn = season.state().equals("OPEN")
                        && season.contains(LocalDate.ofInstant(clock.instant(), station.zone()));
                if (bySeason.containsKey(season.code()) || takesIn) {
                    int least = season.state().equals("CLOSED")
                            ? 0
                            : settings.wholeNumber(
                                    PlanSetting.LOW_KIT_STOCK, season.code(), station.region(), station.unit());
                    stock.add(sum(station, season.code(), least, bySeason.getOrDefault(season.code(), List.of())));
                }
            }
        }
        return stock;
    }

    private static StationStock sum(StationView station, String season, int least, List<BlockTally> blocks) {
        long left = blocks.stream().mapToLong(BlockTally::left).sum();
        return new StationStock(
                station.code(),
                station.name(),
                season,
                blocks.stream().mapToLong(BlockTally::kits).sum(),
                blocks.stream()
                        .filter(b -> b.prints() > 0)
                        .mapToLong(BlockTally::kits)
                        .sum(),
                blocks.stream().mapToLong(BlockTally::used).sum(),
                blocks.stream().mapToLong(BlockTally::voided).sum(),
                blocks.stream().mapToLong(BlockTally::lost).sum(),
                blocks.stream().mapToLong(BlockTally::returned).sum(),
                left,
                blocks.stream().mapToLong(BlockTally::usedElsewhere).sum(),
                blocks.stream().mapToLong(BlockTally::usedInAnotherSeason).sum(),
                left < least);
    }
}
