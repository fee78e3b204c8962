package org.dentary;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;
import org.dentary.platform.account.AccountService;
import org.dentary.platform.account.Role;

/**
 * A small invented season that every test may use. Inject it and call {@link #ensure()} before each test; the second call
 * finds everything there. Nothing else is in it: kits, animals and all that follows are made by each test with fresh codes.
 *
 * <ul>
 *   <li>Seasons {@link #SEASON} (2026-09-01 to 2027-08-31, open) and {@link #EARLIER_SEASON} (the year before, closed).
 *       Seasons must not overlap: a test that sets one up takes days long before 2025.
 *   <li>Regions T_NORTH, T_SOUTH; units {@link #UNIT} (northern, longitude -95 to -94, latitude 45 to 46), {@link
 *       #OTHER_UNIT} (its eastern neighbor, -94 to -93), {@link #SOUTHERN_UNIT} (-95 to -94, 43 to 44).
 *   <li>Stations {@link #STATION} in {@link #UNIT}, zone America/Chicago, and {@link #WESTERN_STATION} in {@link
 *       #SOUTHERN_UNIT}, zone America/Denver.
 *   <li>Disease {@link #DISEASE}; species {@link #SPECIES} with a reviewed jaw key and {@link #SPECIES_WITHOUT_KEY}.
 *   <li>Methods {@link #SCREENING_METHOD} and {@link #CONFIRMATORY_METHOD}, both accepted on medial retropharyngeal node
 *       and obex. {@link #LABORATORY} takes left, right or both nodes and obex, fresh or frozen, for screening within 14
 *       days (formalin never); {@link #CONFIRMING_LABORATORY} takes node and obex in formalin for confirmation.
 *   <li>Store {@link #STORE} at {@link #STATION}: keeper T_SAMPLER, also used by T_LIAISON. Party {@link #PARTY}.
 *   <li>Accounts, password {@link #PASSWORD}, protocol acknowledged: {@code sampler} (all stations), {@code sampler-two}
 *       ({@link #WESTERN_STATION} only), {@code liaison}, {@code epidemiologist}, {@code coordinator},
 *       {@code coordinator-two}, {@code notifier}, {@code auditor}, each with its person: {@code T_} and the name in
 *       capitals, {@code -} as {@code _}; and {@code device}, a sampler's shared device without a person.
 * </ul>
 */
@ApplicationScoped
public class SeasonFixture {
    public static final String SEASON = "T2026";
    public static final String EARLIER_SEASON = "T2025";
    public static final String UNIT = "T_UNIT_1";
    public static final String OTHER_UNIT = "T_UNIT_2";
    public static final String SOUTHERN_UNIT = "T_UNIT_3";
    public static final String STATION = "T_STATION_1";
    public static final String WESTERN_STATION = "T_STATION_2";
    public static final String DISEASE = "CWD";
    public static final String SPECIES = "WHITE_TAILED_DEER";
    public static final String SPECIES_WITHOUT_KEY = "MULE_DEER";
    public static final String LABORATORY = "T_LAB";
    public static final String CONFIRMING_LABORATORY = "T_LAB_CONFIRMING";
    public static final String SCREENING_METHOD = "T_SCREEN";
    public static final String CONFIRMATORY_METHOD = "T_CONFIRM";
    public static final String STORE = "T_FREEZER";
    public static final String PARTY = "T_COURIER";
    public static final String PASSWORD = "test";

    private static final LocalDate IN_FORCE_FROM = LocalDate.of(2025, 1, 1);
    private static final List<Who> WHO = List.of(
            new Who("sampler", Role.SAMPLER, List.of("*")),
            new Who("sampler-two", Role.SAMPLER, List.of(WESTERN_STATION)),
            new Who("liaison", Role.LIAISON, List.of()),
            new Who("epidemiologist", Role.EPIDEMIOLOGIST, List.of()),
            new Who("coordinator", Role.COORDINATOR, List.of("*")),
            new Who("coordinator-two", Role.COORDINATOR, List.of("*")),
            new Who("notifier", Role.NOTIFIER, List.of()),
            new Who("auditor", Role.AUDITOR, List.of()));
    private static final String SET_UP = """
            insert into disease (code, name, position) values ('CWD', 'Chronic wasting disease', 1) on conflict do nothing;
            insert into species (code, name, position, key_reviewed) values
                ('WHITE_TAILED_DEER', 'White-tailed deer', 1, true), ('MULE_DEER', 'Mule deer', 2, false)
                on conflict do nothing;
            insert into region (code, name, position) values ('T_NORTH', 'North', 1), ('T_SOUTH', 'South', 2)
                on conflict do nothing;
            insert into season (code, name, starts_on, ends_on, state) values
                ('T2025', 'Test season 2025', '2025-09-01', '2026-08-31', 'CLOSED'),
                ('T2026', 'Test season 2026', '2026-09-01', '2027-08-31', 'OPEN') on conflict do nothing;
            insert into management_unit (code, name, position, region, boundary, boundary_version) values
                ('T_UNIT_1', 'Unit 1', 1, 'T_NORTH', '{"type":"Polygon","coordinates":[[[-95,45],[-94,45],[-94,46],[-95,46],[-95,45]]]}', '1'),
                ('T_UNIT_2', 'Unit 2', 2, 'T_NORTH', '{"type":"Polygon","coordinates":[[[-94,45],[-93,45],[-93,46],[-94,46],[-94,45]]]}', '1'),
                ('T_UNIT_3', 'Unit 3', 3, 'T_SOUTH', '{"type":"Polygon","coordinates":[[[-95,43],[-94,43],[-94,44],[-95,44],[-95,43]]]}', '1')
                on conflict do nothing;
            insert into station (code, name, position, unit, time_zone) values
                ('T_STATION_1', 'Station 1', 1, 'T_UNIT_1', 'America/Chicago'),
                ('T_STATION_2', 'Station 2', 2, 'T_UNIT_3', 'America/Denver') on conflict do nothing;
            insert into laboratory (code, name, position, address, contact, turnaround_days) values
                ('T_LAB', 'Test laboratory', 1, '1 Test Road', 'desk', 10),
                ('T_LAB_CONFIRMING', 'Confirming laboratory', 2, '2 Test Road', 'desk', 20) on conflict do nothing;
            insert into test_method (code, name, position, disease, accepted_tissues) values
                ('T_SCREEN', 'Screening test', 1, 'CWD', array['MEDIAL_RETROPHARYNGEAL_NODE', 'OBEX']),
                ('T_CONFIRM', 'Confirmatory test', 2, 'CWD', array['MEDIAL_RETROPHARYNGEAL_NODE', 'OBEX'])
                on conflict do nothing;
            insert into plan_setting (name, value) values ('DISEASES_ESTABLISHED', 'CWD') on conflict do nothing;
            insert into party (code, name, position) values ('T_COURIER', 'Test courier', 1) on conflict do nothing
            """;
    private static final String ACCEPTANCE = """
            insert into laboratory_acceptance (laboratory, method, tissue, preservation, side, max_days, in_force_from)
            select 'T_LAB', 'T_SCREEN', t.tissue, p.preservation, cast(null as text), 14, cast(:from as date)
              from unnest(array['MEDIAL_RETROPHARYNGEAL_NODE', 'OBEX']) t(tissue),
                   unnest(array['FRESH_CHILLED', 'FROZEN']) p(preservation)
            union all
            select 'T_LAB_CONFIRMING', 'T_CONFIRM', t.tissue, 'FORMALIN', null, null, cast(:from as date)
              from unnest(array['MEDIAL_RETROPHARYNGEAL_NODE', 'OBEX']) t(tissue)
            """;

    private final EntityManager entities;
    private final AccountService accounts;

    SeasonFixture(EntityManager entities, AccountService accounts) {
        this.entities = entities;
        this.accounts = accounts;
    }

    /** Sets everything up unless it is there. */
    @Transactional
    public void ensure() {
        Number there = (Number) entities.createNativeQuery("select count(*) from account where username = 'device'")
                .getSingleResult();
        if (there.intValue() > 0) {
            return;
        }
        for (String statement : SET_UP.split(";\\s*\\n")) {
            entities.createNativeQuery(statement).executeUpdate();
        }
        entities.createNativeQuery(ACCEPTANCE)
                .setParameter("from", IN_FORCE_FROM)
                .executeUpdate();
        int position = 1;
        for (Who who : WHO) {
            person(who.person(), who.username(), position++);
            open(who.username(), who.person(), who.role(), who.stations());
        }
        entities.createNativeQuery("insert into store (code, name, position, station, keeper) values"
                        + " ('T_FREEZER', 'Station freezer', 1, 'T_STATION_1', 'T_SAMPLER') on conflict do nothing")
                .executeUpdate();
        entities.createNativeQuery(
                        "insert into store_access (store, person) values ('T_FREEZER', 'T_LIAISON') on conflict do nothing")
                .executeUpdate();
        open("device", null, Role.SAMPLER, List.of("*"));
    }

    private void person(String code, String name, int position) {
        entities.createNativeQuery("insert into person (code, name, position, organisation) values"
                        + " (:code, :name, :position, 'Test agency') on conflict do nothing")
                .setParameter("code", code)
                .setParameter("name", "Test " + name)
                .setParameter("position", position)
                .executeUpdate();
    }

    private void open(String username, String person, Role role, List<String> stations) {
        accounts.put(username, person, role, stations, PASSWORD);
        entities.createNativeQuery("insert into protocol_acknowledgement (account, protocol_version, at)"
                        + " values (:account, '1', now()) on conflict do nothing")
                .setParameter("account", username)
                .executeUpdate();
    }

    private record Who(String username, Role role, List<String> stations) {
        String person() {
            return "T_" + username.toUpperCase(java.util.Locale.ROOT).replace('-', '_');
        }
    }
}
