package org.dentary.setup;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.dentary.setup.SetUpRules.Row;
import org.dentary.setup.list.Cell;
import org.dentary.setup.list.Column;
import org.dentary.setup.list.SetUpList;

/**
 * Writes a list's rows with one statement (stores with three), made from {@link SetUpList} alone: new rows are added, rows
 * that differ are changed, the others are not touched. What a file does not name stays.
 */
@ApplicationScoped
class SetUpWrites {
    private static final Map<SetUpList, String> CONFLICT = Map.of(
            SetUpList.ACCEPTANCE,
            "laboratory, method, tissue, preservation, coalesce(side, ''), in_force_from",
            SetUpList.SETTINGS,
            "name, coalesce(season, ''), coalesce(region, ''), coalesce(unit, '')");
    private static final String BOUNDARIES = """
            update management_unit u set boundary = r.boundary, boundary_version = r.boundary_version
              from jsonb_to_recordset(cast(:rows as jsonb)) as r(code text, boundary text, boundary_version text)
             where u.code = r.code
               and (u.boundary, u.boundary_version) is distinct from (r.boundary, r.boundary_version)
            """;
    private static final String ACCOUNTS = """
            insert into account (username, person, role, stations, password_hash, active)
            select r.username, nullif(r.person, ''), r.role, string_to_array(r.stations, ' '),
                   coalesce(nullif(r.password, ''), a.password_hash), r.active = 'yes'
              from jsonb_to_recordset(cast(:rows as jsonb))
                   as r(username text, person text, role text, stations text, password text, active text)
              left join account a on a.username = r.username
                on conflict (username) do update
               set person = excluded.person, role = excluded.role, stations = excluded.stations,
                   password_hash = excluded.password_hash, active = excluded.active, version = account.version + 1
             where (account.person, account.role, account.stations, account.password_hash, account.active)
                   is distinct from
                   (excluded.person, excluded.role, excluded.stations, excluded.password_hash, excluded.active)
            """;
    private static final String STORE_PEOPLE_GONE = """
            delete from store_access s
             using jsonb_to_recordset(cast(:rows as jsonb)) as r(code text, people text)
             where s.store = r.code and s.person <> all (string_to_array(r.people, ' '))
            """;
    private static final String STORE_PEOPLE_NEW = """
            insert into store_access (store, person)
            select r.code, p.person
              from jsonb_to_recordset(cast(:rows as jsonb)) as r(code text, people text),
                   unnest(string_to_array(r.people, ' ')) as p(person)
                on conflict do nothing
            """;

    /** An edition is one row that holds its codes by field; one that is there is not touched. */
    private static final String CODE_MAPS = """
            insert into code_map (laboratory, edition, in_force_from, codes, made_by, made_at)
            select f.laboratory, cast(f.edition as int), cast(f.in_force_from as date),
                   cast(jsonb_object_agg(f.field, f.codes) as text), :by, :at
              from (select r.laboratory, r.edition, min(r.in_force_from) as in_force_from, r.field,
                           jsonb_object_agg(r.code || case when r.system = '' then '' else '^' || r.system end, r.ours) as codes
                      from jsonb_to_recordset(cast(:rows as jsonb))
                           as r(laboratory text, edition text, in_force_from text, field text, code text, system text, ours text)
                     group by r.laboratory, r.edition, r.field) f
             group by f.laboratory, f.edition, f.in_force_from
             order by f.laboratory, cast(f.edition as int)
                on conflict (laboratory, edition) do nothing
            """;

    private final EntityManager entities;
    private final ObjectMapper json;

    SetUpWrites(EntityManager entities, ObjectMapper json) {
        this.entities = entities;
        this.json = json;
    }

    /**
     * Writes checked rows; {@code positions} is the set-up order by key, for lists that have one. Rows that are there keep
     * their place unless the file names the whole list and so gives its order.
     *
     * @param by who posts them, where the list keeps that
     */
    void write(SetUpList list, List<Row> rows, Map<String, Integer> positions, String by, Instant at) {
        boolean whole = positions.size() == rows.size();
        String cells = json(list, rows, positions);
        switch (list) {
            case BOUNDARIES -> execute(BOUNDARIES, cells);
            case ACCOUNTS -> execute(ACCOUNTS, cells);
            case CODE_MAPS ->
                entities.createNativeQuery(CODE_MAPS)
                        .setParameter("rows", cells)
                        .setParameter("by", by)
                        .setParameter("at", at)
                        .executeUpdate();
            case STORES -> {
                execute(upsert(list, whole), cells);
                execute(STORE_PEOPLE_GONE, cells);
                execute(STORE_PEOPLE_NEW, cells);
            }
            default -> execute(upsert(list, whole), cells);
        }
    }

    private void execute(String sql, String rows) {
        entities.createNativeQuery(sql).setParameter("rows", rows).executeUpdate();
    }

    static String upsert(SetUpList list, boolean whole) {
        List<Column> columns = list.columns().stream()
                .filter(column -> column.cell() != Cell.STORE_PEOPLE)
                .toList();
        List<String> names = columns.stream().map(Column::name).toList();
        List<String> changing =
                names.stream().filter(name -> !list.key().contains(name)).collect(Collectors.toList());
        if (list.ordered() && whole) {
            changing.add("position");
        }
        String table = list.table();
        String place = list.ordered() ? ", position" : "";
        return "insert into " + table + " (" + String.join(", ", names) + place + ") select "
                + columns.stream()
                        .map(column -> column.cell().write().formatted("r." + column.name()))
                        .collect(Collectors.joining(", "))
                + (list.ordered() ? ", r.position" : "")
                + " from jsonb_to_recordset(cast(:rows as jsonb)) as r("
                + names.stream().map(name -> name + " text").collect(Collectors.joining(", "))
                + ", position int)"
                + " on conflict (" + CONFLICT.getOrDefault(list, String.join(", ", list.key())) + ") do update set "
                + changing.stream().map(name -> name + " = excluded." + name).collect(Collectors.joining(", "))
                + " where (" + prefixed(table, changing) + ") is distinct from (" + prefixed("excluded", changing)
                + ")";
    }

    private static String prefixed(String table, List<String> names) {
        return names.stream().map(name -> table + "." + name).collect(Collectors.joining(", "));
    }

    private String json(SetUpList list, List<Row> rows, Map<String, Integer> positions) {
        List<Map<String, Object>> cells = rows.stream()
                .map(row -> {
                    Map<String, Object> one = new LinkedHashMap<>(row.cells());
                    one.put("position", positions.get(list.keyOf(row.cells())));
                    return one;
                })
                .toList();
        try {
            return json.writeValueAsString(cells);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("texts and numbers always make JSON", e);
        }
    }
}
