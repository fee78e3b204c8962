package org.dentary.setup.season;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.dentary.plan.SeasonView;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.setup.list.SetUpList;

/**
 * Everything the season's page shows.
 *
 * @param missing what forbids opening a season
 * @param first what is to do before the first deer, or null while a season is open
 * @param changed the season that was opened or closed just now, or null
 * @param settings how many settings the plan has, and how many of them it gives a value
 */
record SeasonPage(
        List<SeasonView> seasons,
        List<FieldProblem> missing,
        FirstSeason first,
        SeasonView changed,
        List<ListRow> lists,
        int settings,
        long settingsGiven,
        Faults faults) {

    /** A list and how many rows it has. */
    record ListRow(SetUpList list, int rows) {
        static List<ListRow> of(Map<SetUpList, Integer> counts) {
            return Arrays.stream(SetUpList.values())
                    .map(list -> new ListRow(list, counts.getOrDefault(list, 0)))
                    .toList();
        }
    }
}
