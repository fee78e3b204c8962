package org.dentary.portal.stock;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.kit.BlockService;
import org.dentary.kit.BlockView;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.plan.StationView;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.PlanSettings;

/** How kits add up: by block, and by station and season. A sampler sees the stations they serve. */
@ApplicationScoped
public class StockService {
    private final BlockService blocks;
    private final StockQueries queries;
    private final PlanService plan;

    StockService(BlockService blocks, StockQueries queries, PlanService plan) {
        this.blocks = blocks;
        this.queries = queries;
        this.plan = plan;
    }

    /** One block's tally; refused like the block itself. */
    public BlockTally tally(UUID block) {
        blocks.block(block);
        return queries.tallies(List.of(block)).get(0);
    }

    /** Every visible block's tally, by block, newest first. */
    public Map<UUID, BlockTally> tallies() {
        return tallies(blocks.blocks());
    }

    /** The tallies of some blocks, by block, newest first. */
    Map<UUID, BlockTally> tallies(List<BlockView> some) {
        List<UUID> ids = some.stream().map(BlockView::id).toList();
        Map<UUID, BlockTally> tallies = new LinkedHashMap<>();
        if (!ids.isEmpty()) {
            queries.tallies(ids).forEach(tally -> tallies.put(tally.block(), tally));
        }
        return tallies;
    }

    /** By station in set-up order and season, oldest first; a station without blocks is left out. */
    public List<StationStock> stations() {
        return stations(tallies());
    }

    /** The same for the seasons that are not closed, whose kits still count. */
    public List<StationStock> stationsNow() {
        Set<String> seasons = plan.seasons().stream()
                .filter(season -> !season.state().equals("CLOSED"))
                .map(SeasonView::code)
                .collect(Collectors.toSet());
        return stations(tallies(blocks.blocks().stream()
                .filter(block -> seasons.contains(block.season()))
                .toList()));
    }

    private List<StationStock> stations(Map<UUID, BlockTally> tallies) {
        Map<String, Map<String, List<BlockTally>>> byStation = tallies.values().stream()
                .collect(Collectors.groupingBy(BlockTally::station, Collectors.groupingBy(BlockTally::season)));
        PlanSettings settings = plan.settings();
        List<SeasonView> inOrder = plan.seasons();
        List<StationStock> stock = new ArrayList<>();
        for (StationView station : plan.stations()) {
            Map<String, List<BlockTally>> seasons = byStation.getOrDefault(station.code(), Map.of());
            inOrder.stream().filter(s -> seasons.containsKey(s.code())).forEach(season -> {
                int least = settings.wholeNumber(
                        PlanSetting.LOW_KIT_STOCK, season.code(), station.region(), station.unit());
                stock.add(sum(
                        station,
                        season.code(),
                        season.state().equals("CLOSED") ? 0 : least,
                        seasons.get(season.code())));
            });
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
