package org.dentary.submission;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.Collection;
import java.util.UUID;
import org.dentary.submission.packing.Verdict;
import org.hibernate.Session;
import org.hibernate.query.MutationQuery;

/** Writes submissions; many specimens are one statement. */
@ApplicationScoped
class SubmissionWrites {
    private static final String OPEN = """
            insert into submission (id, laboratory, purpose, opened_by, opened_at)
            values (:id, :laboratory, :purpose, :by, :at)
            """;
    private static final String CHANGE =
            "update submission set laboratory = :laboratory, purpose = :purpose, version = version + 1 where id = :id";
    private static final String PACK = """
            insert into submission_specimen (submission, code, box, packed_at, packed_by, override_reason, passed, recorded_at)
            values (:id, :code, :box, :at, :by, :override, cast(:passed as text[]), :now)
            on conflict (submission, code) do update
               set box = excluded.box,
                   override_reason = coalesce(excluded.override_reason, submission_specimen.override_reason),
                   passed = case when submission_specimen.override_reason is null then excluded.passed
                                 else submission_specimen.passed || excluded.passed end
            """;
    private static final String PASS = """
            update submission_specimen x
               set override_reason = coalesce(x.override_reason || '; ', '') || :reason,
                   passed = case when x.override_reason is null then '{}' else x.passed end || string_to_array(n.rules, ' ')
              from unnest(cast(:codes as text[]), cast(:rules as text[])) n(code, rules)
             where x.submission = :id and x.code = n.code
            """;
    private static final String TAKE_OUT = "delete from submission_specimen where submission = :id and code = :code";
    private static final String TOUCH = "update submission set version = version + 1 where id = :id";
    private static final String DISPATCH = """
            update submission set state = 'DISPATCHED', carrier = :carrier, waybill = :waybill, checklist = :shipper,
                   dispatched_at = :at, dispatched_by = :by, version = version + 1 where id = :id
            """;
    private static final String ERASE_CARRIER =
            "update submission set carrier = '(erased)', version = version + 1 where id = :id and carrier is not null";
    private static final String ERASE_WAYBILL =
            "update submission set waybill = '(erased)', version = version + 1 where id = :id and waybill is not null";
    private static final String RECEIVE = """
            update submission_specimen
               set receipt = case when code = any (cast(:damaged as text[])) then 'DAMAGED' else 'RECEIVED' end,
                   received_at = case when receipt = 'RECEIVED' then received_at else :at end,
                   receipt_source = case when receipt = 'RECEIVED' then receipt_source else :source end
             where submission = :id and code = any (cast(:codes as text[])) and receipt is distinct from 'DAMAGED'
               and (receipt is distinct from 'RECEIVED' or code = any (cast(:damaged as text[])))
            """;
    private static final String MISS =
            "update submission_specimen set receipt = 'SHORT' where submission = :id and receipt is null";
    private static final String OVER = """
            insert into submission_over (submission, given, received_at)
            select :id, c, :at from unnest(cast(:codes as text[])) c on conflict do nothing
            """;
    private static final String RECEIVED = """
            update submission set state = 'RECEIVED', received_at = coalesce(received_at, :at), version = version + 1
             where id = :id
            """;

    private static final String RECALL = """
            update submission_specimen set receipt = 'RECALLED', received_at = null, receipt_source = null
             where submission = :id and code = any (cast(:codes as text[]))
            """;
    private static final String IMPLIED = """
            update submission_specimen x set implied_at = :at
              from submission b where b.id = x.submission and b.laboratory = :laboratory
               and b.state in ('DISPATCHED', 'RECEIVED') and x.code = any (cast(:codes as text[]))
               and (x.receipt is null or x.receipt = 'SHORT') and x.implied_at is null
            """;

    private final EntityManager entities;

    SubmissionWrites(EntityManager entities) {
        this.entities = entities;
    }

    void open(UUID id, String laboratory, String purpose, String by, Instant at) {
        mutation(OPEN)
                .setParameter("id", id)
                .setParameter("laboratory", laboratory)
                .setParameter("purpose", purpose)
                .setParameter("by", by)
                .setParameter("at", at)
                .executeUpdate();
    }

    void change(UUID id, String laboratory, String purpose) {
        mutation(CHANGE)
                .setParameter("id", id)
                .setParameter("laboratory", laboratory)
                .setParameter("purpose", purpose)
                .executeUpdate();
    }

    void lock(UUID id) {
        entities.createNativeQuery("select 1 from submission where id = :id for update")
                .setParameter("id", id)
                .getResultList();
    }

    /** @param passed names of the rules that the reason passes, none without one */
    void pack(
            UUID id,
            String code,
            String box,
            Instant at,
            String by,
            String override,
            Collection<String> passed,
            Instant now) {
        mutation(PACK)
                .setParameter("id", id)
                .setParameter("code", code)
                .setParameter("box", box, String.class)
                .setParameter("at", at)
                .setParameter("by", by)
                .setParameter("override", override, String.class)
                .setParameter("passed", passed.toArray(String[]::new))
                .setParameter("now", now)
                .executeUpdate();
        mutation(TOUCH).setParameter("id", id).executeUpdate();
    }

    /** Tubes that go although rules say otherwise. */
    void pass(UUID id, Collection<Verdict> verdicts, String reason) {
        mutation(PASS)
                .setParameter("id", id)
                .setParameter("codes", verdicts.stream().map(Verdict::code).toArray(String[]::new))
                .setParameter(
                        "rules",
                        verdicts.stream()
                                .map(one -> String.join(" ", one.passable()))
                                .toArray(String[]::new))
                .setParameter("reason", reason)
                .executeUpdate();
    }

    int takeOut(UUID id, String code) {
        int taken = mutation(TAKE_OUT)
                .setParameter("id", id)
                .setParameter("code", code)
                .executeUpdate();
        if (taken > 0) {
            mutation(TOUCH).setParameter("id", id).executeUpdate();
        }
        return taken;
    }

    void dispatch(UUID id, String carrier, String waybill, String shipper, Instant at, String by) {
        mutation(DISPATCH)
                .setParameter("id", id)
                .setParameter("carrier", carrier)
                .setParameter("waybill", waybill, String.class)
                .setParameter("shipper", shipper == null ? "" : shipper)
                .setParameter("at", at)
                .setParameter("by", by)
                .executeUpdate();
    }

    /** Says of the carrier or the waybill no more than that it was erased; the entries on the chains tell by whom. */
    int erase(UUID id, String field) {
        return mutation(field.equals("carrier") ? ERASE_CARRIER : ERASE_WAYBILL)
                .setParameter("id", id)
                .executeUpdate();
    }

    void receive(
            UUID id,
            Collection<String> codes,
            Collection<String> damaged,
            Collection<String> over,
            Instant at,
            Receipt.Source source) {
        mutation(RECEIVE)
                .setParameter("id", id)
                .setParameter("source", source.name())
                .setParameter("codes", codes.toArray(String[]::new))
                .setParameter("damaged", damaged.toArray(String[]::new))
                .setParameter("at", at)
                .executeUpdate();
        mutation(OVER)
                .setParameter("id", id)
                .setParameter("codes", over.toArray(String[]::new))
                .setParameter("at", at)
                .executeUpdate();
        mutation(MISS).setParameter("id", id).executeUpdate();
        mutation(RECEIVED).setParameter("id", id).setParameter("at", at).executeUpdate();
    }

    void recall(UUID id, Collection<String> codes) {
        mutation(RECALL)
                .setParameter("id", id)
                .setParameter("codes", codes.toArray(String[]::new))
                .executeUpdate();
        mutation(TOUCH).setParameter("id", id).executeUpdate();
    }

    void implied(Collection<String> codes, String laboratory, Instant at) {
        mutation(IMPLIED)
                .setParameter("codes", codes.toArray(String[]::new))
                .setParameter("laboratory", laboratory)
                .setParameter("at", at)
                .executeUpdate();
    }

    private MutationQuery mutation(String sql) {
        return entities.unwrap(Session.class).createNativeMutationQuery(sql);
    }
}
