package org.dentary.result.imports;

import static org.dentary.intake.IntakeFixture.as;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.result.FindingsFixture;

/** A file large enough that its progress is told, of which one line can be posted; and a way to hold its posting up. */
@ApplicationScoped
public class LargeFile {
    /** Lines whose code a spreadsheet has damaged. */
    public static final int FAULTY = 2_600;

    private final FindingsFixture findings;
    private final EntityManager entities;

    LargeFile(FindingsFixture findings, EntityManager entities) {
        this.findings = findings;
        this.entities = entities;
    }

    /** CSV; the second line is good, those after it are not. */
    public String csv() {
        Deer deer = findings.atTheLaboratory(findings.unitWithoutTheDisease());
        StringBuilder csv =
                new StringBuilder("specimen_code,accession_number,test_method,stage,finding,tested_on,reported_on\r\n");
        String rest = ",T_SCREEN,SCREENING,NOT_DETECTED,2025-11-18,2025-11-19\r\n";
        csv.append(deer.label(Part.NODE_LEFT)).append(",A-").append(deer.kit()).append(rest);
        for (int i = 0; i < FAULTY; i++) {
            csv.append("1E5,A-LARGE-FILE-OF-")
                    .append(deer.kit())
                    .append('-')
                    .append(i)
                    .append(rest);
        }
        return csv.toString();
    }

    /** Previewed by the API, which waits and answers when it is done. */
    public UUID previewed() {
        UUID id = UUID.randomUUID();
        as("liaison")
                .contentType("text/csv")
                .body(csv())
                .put("/api/v1/result-imports/" + id + "?laboratory=T_LAB&name=large.csv")
                .then()
                .statusCode(201);
        return id;
    }

    /** Holds the import locked in a transaction of its own until it is let go. */
    public Held hold(UUID id) {
        CountDownLatch letGo = new CountDownLatch(1);
        CountDownLatch held = new CountDownLatch(1);
        CompletableFuture<Void> holder = CompletableFuture.runAsync(() -> QuarkusTransaction.requiringNew()
                .run(() -> {
                    entities.createNativeQuery("select 1 from result_import where id = :id for update")
                            .setParameter("id", id)
                            .getSingleResult();
                    held.countDown();
                    await(letGo);
                }));
        await(held);
        return () -> {
            letGo.countDown();
            holder.join();
        };
    }

    /** What is held up until it is closed. */
    public interface Held extends AutoCloseable {
        @Override
        void close();
    }

    /** As a service leaves it that was killed some time ago in the middle of posting. */
    public void abandoned(UUID id) {
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(
                                "insert into result_import_work (import, act, file_name, begun_by, begun_at) values ('"
                                        + id + "', 'POSTING', 'large.csv', 'drill', now() - interval '1 minute')")
                        .executeUpdate());
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
