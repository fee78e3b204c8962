package org.dentary.submission;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.List;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Which submissions there are, and where a tube went, each from rows of its own. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class SubmissionQueriesTest {
    private static final Sight ALL = new Sight(true, true, List.of());

    @Inject
    SeasonFixture season;

    @Inject
    SubmissionFixture bench;

    @Inject
    SubmissionQueries queries;

    @Inject
    SubmissionService submissions;

    @Inject
    ReceiptService receipts;

    @BeforeEach
    void setUp() {
        season.ensure();
    }

    @Test
    void aResultSaysThatTheTubeArrived() {
        String code = bench.aNode();
        String id = bench.sent(code);
        String elsewhere = bench.aNode();
        String other = bench.packed(elsewhere);
        receipts.impliedReceipt(List.of(code, elsewhere), "T_LAB", Instant.parse("2025-11-18T00:00:00Z"));
        assertEquals(List.of("RECEIVED"), bench.view(id).getList("specimens.receipt"));
        assertEquals(
                java.util.Collections.singletonList(null), bench.view(other).getList("specimens.receipt"));
    }

    @Test
    void submissionsAreListedNewestFirstByStateAndLaboratory() {
        String packing = bench.packed(bench.aNode());
        String sent = bench.sent(bench.aNode());
        List<String> dispatched = ids("DISPATCHED", "T_LAB");
        assertTrue(dispatched.contains(sent));
        assertFalse(dispatched.contains(packing));
        assertFalse(ids("DISPATCHED", "T_LAB_CONFIRMING").contains(sent));
        List<Long> numbers = queries.list(List.of(), null, null, 1000, ALL).stream()
                .map(SubmissionQueries.Head::number)
                .toList();
        assertEquals(
                numbers.stream().sorted(java.util.Comparator.reverseOrder()).toList(), numbers);
        assertEquals(1, queries.list(List.of(), null, null, 1, ALL).size());
        assertEquals(
                numbers.get(1),
                queries.list(List.of(), null, numbers.get(0), 1, ALL).get(0).number());
    }

    @Test
    void routesNameEveryLaboratoryThatATubeWentTo() {
        String code = bench.aNode();
        bench.receive(bench.sent(code), code).statusCode(201);
        String next = bench.begun("T_LAB_CONFIRMING");
        bench.pack(
                        next,
                        code,
                        "{\"packedAt\":\"2025-11-17T08:00:00-06:00\",\"overrideReason\":\"agreed with the laboratory\"}")
                .statusCode(201);
        String unsent = bench.aNode();
        var routes = submissions.routes(List.of(code, unsent));
        assertEquals(List.of("T_LAB", "T_LAB_CONFIRMING"), routes.get(code));
        assertFalse(routes.containsKey(unsent));
        assertTrue(submissions.routes(List.of()).isEmpty());
    }

    private List<String> ids(String state, String laboratory) {
        return queries.list(state == null ? List.of() : List.of(state), laboratory, null, 1000, ALL).stream()
                .map(SubmissionQueries.Head::id)
                .toList();
    }
}
