package org.dentary.portal.home;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.Act;
import org.dentary.portal.stock.StationStock;
import org.dentary.portal.stock.StockService;
import org.dentary.story.Called;

/** Notices of stations that run low on kits. */
@ApplicationScoped
class LowStock {
    private static final int NAMED = 8;

    private final StockService stock;
    private final Called called;

    LowStock(StockService stock, Called called) {
        this.stock = stock;
        this.called = called;
    }

    /** One notice a season, however many stations run low: those with the fewest kits by name, the others by number. */
    List<Home.Notice> notices(Account account) {
        Map<String, List<StationStock>> bySeason = stock.stationsNow().stream()
                .filter(StationStock::low)
                .filter(s -> account.may(Act.KIT_ISSUE) || account.serves(s.station()))
                .sorted(Comparator.comparing(StationStock::left))
                .collect(Collectors.groupingBy(StationStock::season, TreeMap::new, Collectors.toList()));
        return bySeason.entrySet().stream()
                .map(season -> new Home.Notice(
                        "Few kits left for " + called.season(season.getKey()) + ": " + words(season.getValue()) + ".",
                        account.may(Act.KIT_ISSUE) ? "/kits/issue" : "/kits",
                        account.may(Act.KIT_ISSUE) ? "Issue kits" : "Kits and blocks"))
                .toList();
    }

    private static String words(List<StationStock> low) {
        String named = low.stream()
                .limit(NAMED)
                .map(s -> s.stationName() + " has " + (s.left() == 0 ? "none" : s.left()))
                .collect(Collectors.joining(", "));
        int more = low.size() - NAMED;
        return more <= 0 ? named : named + ", and " + more + " more";
    }
}
