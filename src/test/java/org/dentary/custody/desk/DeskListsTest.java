package org.dentary.custody.desk;

import static org.dentary.custody.Http.as;
import static org.dentary.custody.Http.json;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.dentary.SeasonFixture;
import org.dentary.custody.CustodyFixture;
import org.dentary.custody.chain.Answers.Mark;
import org.dentary.custody.handover.ActingFor;
import org.dentary.custody.handover.HandOverView;
import org.dentary.custody.handover.OpenOffers;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

/** What lies on a desk, read a few at a time, is the same as read at once, and as counted. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
@ActivateRequestContext
class DeskListsTest {
    private static final int ALL = 1_000_000;

    @Inject
    CustodyFixture fixture;

    @Inject
    HoldingsQueries holdings;

    @Inject
    OpenOffers offers;

    @Inject
    Clock clock;

    @Test
    void whatIsHeldAndStored() {
        // Collected at one moment, so that the code has to part them.
        Instant at = clock.instant().minus(Duration.ofHours(3));
        List<String> codes = fixture.collected(7, at);
        json("sampler")
                .body(Map.of(
                        "codes",
                        codes.subList(0, 4),
                        "to",
                        SeasonFixture.STORE,
                        "occurredAt",
                        at.plusSeconds(60).toString()))
                .put("/api/v1/hand-overs/" + UUID.randomUUID())
                .then()
                .statusCode(201);
        ActingFor me = new ActingFor("T_SAMPLER", List.of(SeasonFixture.STORE), false, "");
        List<String> held = same((after, most) -> holdings.inHand(me, after, most), Held::mark, Held::code);
        List<String> stored = same((after, most) -> holdings.inStores(me, after, most), Held::mark, Held::code);
        assertTrue(held.containsAll(codes.subList(4, 7)) && stored.containsAll(codes.subList(0, 4)));
        assertEquals(held.size(), holdings.countInHand(me));
        assertEquals(stored.size(), holdings.countInStores(me));
    }

    @Test
    void whatIsOffered() {
        Instant at = clock.instant().minus(Duration.ofMinutes(3));
        List<String> ids = new ArrayList<>();
        for (String code : fixture.collected(5, at)) {
            String id = UUID.randomUUID().toString();
            json("sampler")
                    .body(Map.of("codes", List.of(code), "to", "T_LIAISON", "occurredAt", at.toString()))
                    .put("/api/v1/hand-overs/" + id)
                    .then()
                    .statusCode(201);
            ids.add(id);
        }
        fixture.as("sampler");
        ActingFor giver = offers.acting();
        Function<HandOverView, String> id = one -> one.id().toString();
        List<String> given = same((after, most) -> offers.fromMe(giver, after, most), OpenOffers::mark, id);
        assertEquals(given.size(), offers.countFromMe());
        fixture.as("liaison");
        ActingFor receiver = offers.acting();
        List<String> waiting = same((after, most) -> offers.toMe(receiver, after, most), OpenOffers::mark, id);
        assertEquals(waiting.size(), offers.countToMe());
        assertTrue(given.containsAll(ids) && waiting.containsAll(ids));
        assertEquals(
                waiting.size(),
                as("liaison")
                        .get("/api/v1/custody/offers.csv")
                        .asString()
                        .lines()
                        .filter(line -> line.contains(",TO_ME,"))
                        .count());
        ids.forEach(
                one -> json("sampler").body(Map.of("reason", "a test")).post("/api/v1/hand-overs/" + one + "/refusal"));
    }

    private static <T> List<String> same(
            BiFunction<Mark, Integer, List<T>> list, Function<T, Mark> mark, Function<T, String> id) {
        List<String> atOnce = list.apply(null, ALL).stream().map(id).toList();
        List<String> byPages = new ArrayList<>();
        List<T> page = list.apply(null, 3);
        while (!page.isEmpty()) {
            page.stream().map(id).forEach(byPages::add);
            page = list.apply(mark.apply(page.get(page.size() - 1)), 3);
        }
        assertEquals(atOnce, byPages);
        return atOnce;
    }
}
