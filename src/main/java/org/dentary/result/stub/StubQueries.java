package org.dentary.result.stub;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/** Looks a stub up and counts the tries. */
@ApplicationScoped
class StubQueries {
    /** One statement whether the code, the fact or nothing fits, so that the work done tells nothing. */
    private static final String FIND = """
            select d.name as disease, case when not a.not_attributable then l.outcome
                        when exists (select 1 from unidentified_kit u where u.kit = l.kit) then 'NOT_ATTRIBUTABLE'
                        else 'PENDING' end as outcome,
                   s.name as species,
                   exists (select 1 from notification_attempt t
                            where t.kit = l.kit and t.disease = l.disease and t.outcome = l.outcome and t.result = 'REACHED'
                              and not exists (select 1 from notification_attempt r where r.corrects = t.id)) as reached
              from label b join animal a on a.kit = b.kit_bound
              join line l on l.kit = a.kit and l.closed_at is null join disease d on d.code = l.disease
              join species s on s.code = l.species
             where b.code = :code and b.part = 'STUB' and b.voided_at is null and not a.entered_in_error
               and (cast(:diedOn as date) is null or a.died_on = cast(:diedOn as date))
               and (:station = '' or a.station = :station)
             order by d.position, d.code
            """;

    private static final String COUNT = """
            select (select count(*) from stub_look_up where address_digest = :address and at > :since),
                   (select count(*) from stub_look_up where code_digest = :code and at > :since)
            """;
    private static final String NOTE =
            "insert into stub_look_up (address_digest, code_digest, at) values (:address, :code, :now)";
    private static final String FORGET = "delete from stub_look_up where at < :before";

    private final EntityManager entities;

    StubQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** What is released for one disease. */
    record Row(String disease, String outcome, String species, Boolean reached) {}

    record Tries(Long byAddress, Long ofCode) {}

    @SuppressWarnings("unchecked")
    List<Row> find(String code, LocalDate diedOn, String station) {
        return entities.createNativeQuery(FIND, Row.class)
                .setParameter("code", code)
                .setParameter("diedOn", diedOn)
                .setParameter("station", station)
                .getResultList();
    }

    Tries tries(String address, String code, Instant since) {
        return (Tries) entities.createNativeQuery(COUNT, Tries.class)
                .setParameter("address", address)
                .setParameter("code", code)
                .setParameter("since", since)
                .getSingleResult();
    }

    void note(String address, String code, Instant now, Instant before) {
        entities.createNativeQuery(FORGET).setParameter("before", before).executeUpdate();
        entities.createNativeQuery(NOTE)
                .setParameter("address", address)
                .setParameter("code", code)
                .setParameter("now", now)
                .executeUpdate();
    }
}
