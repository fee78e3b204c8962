package org.dentary.portal.home;

import jakarta.enterprise.context.ApplicationScoped;
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
    private final StockService stock;
    private final Called called;

    LowStock(StockService stock, Called called) {
        this.stock = stock;
        this.called = called;
    }

    /** One notice a season, however many stations run low. */
    List<Home.Notice> notices(Account account) {
        Map<String, String> bySeason = stock.stationsNow().stream()
                .filter(StationStock::low)
                .filter(s -> account.may(Act.KIT_ISSUE) || account.serves(s.station()))
                .collect(Collectors.groupingBy(
                        StationStock::season,
                        TreeMap::new,
                        Collectors.mapping(s -> s.stationName() + " has " + s.left(), Collectors.joining(", "))));
        return bySeason.entrySet().stream()
                .map(season -> new Home.Notice(
                        "Few kits left for " + called.season(season.getKey()) + ": " + season.getValue() + ".",
                        account.may(Act.KIT_ISSUE) ? "/kits/issue" : "/kits",
                        account.may(Act.KIT_ISSUE) ? "Issue kits" : "Kits and blocks"))
                .toList();
    }
}
