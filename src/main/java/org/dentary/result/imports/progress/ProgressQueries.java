package org.dentary.result.imports.progress;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Writes and reads how far large imports are. */
@ApplicationScoped
class ProgressQueries {
    private static final String BEGIN = """
            insert into result_import_work (import, act, file_name, begun_by, begun_at)
            values (:id, :act, :name, :by, :at)
            on conflict (import) do update set act = excluded.act, file_name = excluded.file_name,
                   begun_by = excluded.begun_by, begun_at = excluded.begun_at, refusal = null
            """;
    private static final String STEP =
            "insert into result_import_step (import, step, done, total, at) values (:id, :step, :done, :total, :at)";
    private static final String FIND = """
            select w.act, w.file_name, w.begun_at, w.refusal, coalesce(s.step, '') as step, coalesce(s.done, 0) as done,
                   coalesce(s.total, 0) as total, coalesce(s.at, w.begun_at) as moved_at
              from result_import_work w
              left join lateral (select * from result_import_step x where x.import = w.import
                                  order by x.position desc limit 1) s on true
             where w.import = :id
            """;

    private final EntityManager entities;

    ProgressQueries(EntityManager entities) {
        this.entities = entities;
    }

    record Row(
            String act,
            String fileName,
            Instant begunAt,
            String refusal,
            String step,
            Integer done,
            Integer total,
            Instant movedAt) {}

    void begin(UUID id, String act, String fileName, String by, Instant at) {
        entities.createNativeQuery("delete from result_import_step where import = :id")
                .setParameter("id", id)
                .executeUpdate();
        entities.unwrap(Session.class)
                .createNativeMutationQuery(BEGIN)
                .setParameter("id", id)
                .setParameter("act", act)
                .setParameter("name", fileName, String.class)
                .setParameter("by", by)
                .setParameter("at", at)
                .executeUpdate();
    }

    void step(UUID id, ImportStep step, int done, int total, Instant at) {
        entities.createNativeQuery(STEP)
                .setParameter("id", id)
                .setParameter("step", step.name())
                .setParameter("done", done)
                .setParameter("total", total)
                .setParameter("at", at)
                .executeUpdate();
    }

    void refuse(UUID id, String why) {
        entities.createNativeQuery("update result_import_work set refusal = :why where import = :id")
                .setParameter("id", id)
                .setParameter("why", why)
                .executeUpdate();
    }

    /** Holds the row until the caller's transaction ends, however it ends; steps refer to its key, which stays free. */
    void hold(UUID id) {
        entities.createNativeQuery("select act from result_import_work where import = :id for no key update")
                .setParameter("id", id)
                .getResultList();
    }

    void end(UUID id) {
        entities.createNativeQuery("delete from result_import_work where import = :id")
                .setParameter("id", id)
                .executeUpdate();
    }

    /** Whether nobody holds it. */
    boolean isFree(UUID id) {
        return !entities.createNativeQuery(
                        "select act from result_import_work where import = :id for share skip locked")
                .setParameter("id", id)
                .getResultList()
                .isEmpty();
    }

    @SuppressWarnings("unchecked")
    Optional<Row> find(UUID id) {
        return ((List<Row>) entities.createNativeQuery(FIND, Row.class)
                        .setParameter("id", id)
                        .getResultList())
                .stream().findFirst();
    }
}
