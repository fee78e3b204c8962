package org.dentary.custody.box;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Reads and writes boxes; what is in them stands at the chains' ends. */
@ApplicationScoped
public class BoxQueries {
    private static final String FIND = """
            select x.code, x.place, x.opened_by, x.opened_at, x.tamper_seal,
                   case when h.custodian_kind <> 'PARTY' then 'OPEN'
                        when exists (select 1 from laboratory y where y.code = h.custodian) then 'ARRIVED'
                        else 'SHIPPED' end as state, x.version
              from box x join custody_head h on h.code = x.code
             where x.code = :code
            """;
    private static final String INSERT = """
            insert into box (code, place, opened_by, opened_at) values (:code, :place, :by, :at)
            on conflict (code) do nothing
            """;
    private static final String MOVE =
            "update box set place = coalesce(cast(:place as text), place), version = version + 1 where code = :code";
    private static final String SEAL = """
            update box set tamper_seal = :seal, version = version + 1 where code = any(:codes)
            """;

    private final EntityManager entities;

    BoxQueries(EntityManager entities) {
        this.entities = entities;
    }

    /**
     * A box.
     *
     * @param state by who has it: OPEN, SHIPPED with a carrier or other organization, ARRIVED at a laboratory
     */
    record BoxRow(
            String code,
            String place,
            String openedBy,
            Instant openedAt,
            String tamperSeal,
            String state,
            Integer version) {}

    @SuppressWarnings("unchecked")
    Optional<BoxRow> find(String code) {
        return ((List<BoxRow>) entities.createNativeQuery(FIND, BoxRow.class)
                        .setParameter("code", code)
                        .getResultList())
                .stream().findFirst();
    }

    /** @return whether it is new */
    boolean insert(String code, String place, String by, Instant at) {
        return entities.createNativeQuery(INSERT)
                        .setParameter("code", code)
                        .setParameter("place", place)
                        .setParameter("by", by)
                        .setParameter("at", at)
                        .executeUpdate()
                == 1;
    }

    /** @param place null keeps it */
    void move(String code, String place) {
        entities.createNativeQuery(MOVE)
                .setParameter("code", code)
                .setParameter("place", place)
                .executeUpdate();
    }

    /** Notes the seal on those codes that are boxes. */
    public void seal(List<String> codes, String seal) {
        entities.createNativeQuery(SEAL)
                .setParameter("codes", codes.toArray(String[]::new))
                .setParameter("seal", seal)
                .executeUpdate();
    }
}
