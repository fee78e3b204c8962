package org.dentary.setup;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.dentary.setup.list.Known;
import org.dentary.setup.list.SetUpList;

/** Reads every list as text, column by column as in its file; the statements are made from {@link SetUpList} alone. */
@ApplicationScoped
class SetUpQueries {
    private static final List<SetUpList> REFERRED_TO = List.of(
            SetUpList.DISEASES,
            SetUpList.SPECIES,
            SetUpList.REGIONS,
            SetUpList.SEASONS,
            SetUpList.UNITS,
            SetUpList.STATIONS,
            SetUpList.LABORATORIES,
            SetUpList.METHODS,
            SetUpList.PERSONS);
    private static final String CODES = REFERRED_TO.stream()
            .map(list -> "select '" + list.name() + "', code from " + list.table())
            .collect(Collectors.joining(" union all "));
    private static final String FIXED_SEASONS = "select code from season where state <> 'DRAFT'";
    private static final String COUNTS = java.util.Arrays.stream(SetUpList.values())
            .map(list -> "select '" + list.name() + "', count(*) from " + list.table() + where(list))
            .collect(Collectors.joining(" union all "));

    private final EntityManager entities;

    SetUpQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** What a file for the list can refer to and what is there, in three queries whatever the file's length. */
    Known known(SetUpList list) {
        Map<SetUpList, Set<String>> codes = new EnumMap<>(SetUpList.class);
        for (Object[] row : rows(CODES)) {
            codes.computeIfAbsent(SetUpList.valueOf((String) row[0]), any -> new HashSet<>())
                    .add((String) row[1]);
        }
        Set<String> fixed = new HashSet<>();
        entities.createNativeQuery(FIXED_SEASONS).getResultList().forEach(code -> fixed.add((String) code));
        return Known.of(list, codes, present(list), fixed);
    }

    /** The rows of a list in set-up order, each cell as its file has it. */
    List<Map<String, String>> present(SetUpList list) {
        String columns = list.columns().stream()
                .map(column -> column.cell().read().formatted(column.name()))
                .collect(Collectors.joining(", "));
        String order = list.ordered() ? "position, " : "";
        String sql = "select " + columns + " from " + list.table() + where(list) + " order by " + order
                + (list == SetUpList.SEASONS ? "starts_on" : String.join(", ", list.key()));
        List<Map<String, String>> present = new ArrayList<>();
        for (Object[] row : rows(sql)) {
            Map<String, String> cells = new LinkedHashMap<>();
            for (int i = 0; i < row.length; i++) {
                cells.put(list.columns().get(i).name(), (String) row[i]);
            }
            present.add(cells);
        }
        return present;
    }

    /** How many rows each list has. */
    Map<SetUpList, Integer> counts() {
        Map<SetUpList, Integer> counts = new EnumMap<>(SetUpList.class);
        rows(COUNTS).forEach(row -> counts.put(SetUpList.valueOf((String) row[0]), ((Number) row[1]).intValue()));
        return counts;
    }

    private static String where(SetUpList list) {
        return list == SetUpList.BOUNDARIES ? " where boundary is not null" : "";
    }

    @SuppressWarnings("unchecked")
    private List<Object[]> rows(String sql) {
        return entities.createNativeQuery(sql).getResultList();
    }
}
