package org.dentary.people;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/** Reads the roster, each list in set-up order. */
@ApplicationScoped
class PeopleQueries {
    private static final String PERSONS = "select code, name, organisation, active from person order by position, code";
    private static final String PERSON = "select code, name, organisation, active from person where code = :code";
    private static final String PARTIES = "select code, name from party order by position, code";
    private static final String STORES = """
            select s.code, s.name, s.station, s.keeper,
                   (select string_agg(p, ' ' order by p)
                      from (select s.keeper as p union select a.person from store_access a where a.store = s.code) u)
              from store s order by s.position, s.code
            """;
    private static final String MAY_USE = """
            select count(*) from store s
             where s.code = :store
               and (s.keeper = :person
                    or exists (select 1 from store_access a where a.store = s.code and a.person = :person))
            """;
    // Who is meant by what was typed: exact before another case, persons before accounts before stores before parties.
    private static final String CUSTODIANS = """
            select typed.code as typed, c.kind, c.code, c.name
              from unnest(cast(:typed as text[])) as typed(code)
             cross join lateral (
                select kind, code, name from (
                    select 'PERSON' as kind, p.code, p.name, p.code as by, 1 as rank
                      from person p where upper(p.code) = upper(typed.code)
                    union all
                    select 'PERSON', coalesce(p.code, a.username), coalesce(p.name, a.username), a.username, 2
                      from account a left join person p on p.code = a.person
                     where upper(a.username) = upper(typed.code) and a.active
                    union all
                    select 'STORE', s.code, s.name, s.code, 3 from store s where upper(s.code) = upper(typed.code)
                    union all
                    select 'PARTY', o.code, o.name, o.code, 4 from party o where upper(o.code) = upper(typed.code)
                    union all
                    select 'PARTY', l.code, l.name, l.code, 5 from laboratory l where upper(l.code) = upper(typed.code)
                ) found order by by <> typed.code, rank limit 1) c
            """;
    private static final String ACKNOWLEDGED = """
            select count(*) from protocol_acknowledgement where account = :account and protocol_version = :version
            """;

    private final EntityManager entities;

    PeopleQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** A store as stored; its people separated by blanks. */
    record StoreRow(String code, String name, String station, String keeper, String people) {
        StoreView view() {
            return new StoreView(code, name, station, keeper, List.of(people.split(" ")));
        }
    }

    /** What was typed and who is meant. */
    record CustodianRow(String typed, String kind, String code, String name) {
        Custodian custodian() {
            return new Custodian(Custodian.Kind.valueOf(kind), code, name);
        }
    }

    List<PersonView> persons() {
        return rows(entities.createNativeQuery(PERSONS, PersonView.class), PersonView.class);
    }

    Optional<PersonView> person(String code) {
        return rows(entities.createNativeQuery(PERSON, PersonView.class).setParameter("code", code), PersonView.class)
                .stream()
                .findFirst();
    }

    List<PartyView> parties() {
        return rows(entities.createNativeQuery(PARTIES, PartyView.class), PartyView.class);
    }

    List<StoreView> stores() {
        return rows(entities.createNativeQuery(STORES, StoreRow.class), StoreRow.class).stream()
                .map(StoreRow::view)
                .toList();
    }

    boolean mayUse(String store, String person) {
        return count(entities.createNativeQuery(MAY_USE)
                        .setParameter("store", store)
                        .setParameter("person", person))
                > 0;
    }

    List<CustodianRow> custodians(Collection<String> typed) {
        return rows(
                entities.createNativeQuery(CUSTODIANS, CustodianRow.class)
                        .setParameter("typed", typed.toArray(String[]::new)),
                CustodianRow.class);
    }

    boolean acknowledged(String account, String version) {
        return count(entities.createNativeQuery(ACKNOWLEDGED)
                        .setParameter("account", account)
                        .setParameter("version", version))
                > 0;
    }

    private static long count(Query query) {
        return ((Number) query.getSingleResult()).longValue();
    }

    @SuppressWarnings("unchecked")
    private static <T> List<T> rows(Query query, Class<T> row) {
        return (List<T>) query.getResultList();
    }
}
