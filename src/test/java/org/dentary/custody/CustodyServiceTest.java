package org.dentary.custody;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.custody.chain.CustodyKind;
import org.dentary.custody.chain.RecordedEvent;
import org.dentary.ledger.LedgerStore;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.RuleBroken;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
@ActivateRequestContext
class CustodyServiceTest {
    @Inject
    CustodyFixture fixture;

    @Inject
    CustodyService custody;

    @Inject
    ParcelService parcels;

    @Inject
    LedgerStore ledger;

    @Inject
    Clock clock;

    private Instant hourAgo;

    @BeforeEach
    void time() {
        hourAgo = clock.instant().minus(Duration.ofHours(1));
    }

    @Test
    void collectionBeginsCustodyWithTheCollector() {
        String code = fixture.collected(1, hourAgo).get(0);
        HeadView head = custody.heads(List.of(code)).get(code);
        assertEquals("T_SAMPLER", head.custodian());
        assertEquals("PERSON", head.custodianKind());
        assertEquals(SeasonFixture.STATION, head.place());
        RecordedEvent event = event(code, 1);
        assertEquals(CustodyKind.COLLECTED, event.kind());
        assertEquals("0".repeat(64), event.text("predecessor"));
        assertEquals("America/Chicago", event.text("zone"));
    }

    @Test
    void aLateCollectionIsMarkedAndNotRefused() {
        String code = fixture.labels(1, Part.NODE_LEFT).get(0);
        fixture.as("sampler");
        Instant longAgo = clock.instant().minus(Duration.ofDays(3));
        custody.collected(List.of(new Collected(code, longAgo, null, null, null)));
        assertTrue(event(code, 1).step().late());
    }

    @Test
    void refusesCollectionInTheFutureAndTwice() {
        String code = fixture.labels(1, Part.NODE_LEFT).get(0);
        fixture.as("sampler");
        Instant soon = clock.instant().plus(Duration.ofHours(1));
        assertCode(
                "IN_FUTURE",
                InvalidInput.class,
                () -> custody.collected(List.of(new Collected(code, soon, null, null, null))));
        List<Collected> once = List.of(new Collected(code, hourAgo, null, null, null));
        custody.collected(once);
        assertCode("CUSTODY_BEGUN", RuleBroken.class, () -> custody.collected(once));
    }

    @Test
    void aPieceIsHeldByWhoeverHoldsItsParentAndTheParentTellsOfIt() {
        String parent = fixture.collected(1, hourAgo).get(0);
        String piece = fixture.labels(1, Part.SPARE_1).get(0);
        fixture.as("liaison");
        custody.collected(
                List.of(new Collected(piece, hourAgo.plusSeconds(60), null, SeasonFixture.STATION, "GOOD", parent)));
        assertEquals("T_SAMPLER", custody.heads(List.of(piece)).get(piece).custodian());
        assertEquals(CustodyKind.SPLIT, event(parent, 2).kind());
        assertEquals(piece, event(parent, 2).field("child"));
        String older = fixture.labels(1, Part.SPARE_2).get(0);
        fixture.as("liaison");
        assertCode(
                "BEFORE_COLLECTION",
                InvalidInput.class,
                () -> custody.collected(
                        List.of(new Collected(older, hourAgo.minusSeconds(60), null, null, "GOOD", parent))));
    }

    @Test
    void shippingGoesToTheCarrierAndReceiptToTheLaboratory() {
        List<String> codes = fixture.collected(3, hourAgo);
        fixture.as("liaison");
        assertCode("NOT_HELD", RuleBroken.class, () -> ship(codes, hourAgo.plusSeconds(60)));
        fixture.as("sampler");
        ship(codes, hourAgo.plusSeconds(60));
        HeadView shipped = custody.heads(codes).get(codes.get(0));
        assertEquals("CARRIER", shipped.custodian());
        fixture.as("liaison");
        UUID act = UUID.randomUUID();
        assertEquals(3, receive(codes, hourAgo.plusSeconds(120), act).size());
        HeadView received = custody.heads(codes).get(codes.get(0));
        assertEquals(SeasonFixture.LABORATORY, received.custodian());
        assertEquals("PARTY", received.custodianKind());
        assertEquals(CustodyKind.RECEIVED, event(codes.get(0), 3).kind());
        assertEquals(List.of(), receive(codes, clock.instant(), act));
    }

    @Test
    void aLateEntryIsPlacedWhereItHappenedAndLeavesTheCustodianAlone() {
        List<String> codes = fixture.collected(1, hourAgo);
        ship(codes, hourAgo.plusSeconds(60));
        fixture.as("liaison");
        receive(codes, hourAgo.plusSeconds(30), UUID.randomUUID());
        assertEquals("CARRIER", custody.heads(codes).get(codes.get(0)).custodian());
        assertTrue(event(codes.get(0), 3).step().late());
    }

    private void ship(List<String> codes, Instant at) {
        parcels.ship(
                new Shipment(codes, "Invented Express", "W-1", at, null, null, UUID.randomUUID(), null, List.of()));
    }

    private List<String> receive(List<String> codes, Instant at, UUID act) {
        return parcels.receive(new Arrival(codes, SeasonFixture.LABORATORY, at, null, null, act, null));
    }

    private RecordedEvent event(String code, int sequence) {
        return RecordedEvent.of(ledger.chain(code).get(sequence - 1));
    }

    private static <T extends DomainException> void assertCode(String code, Class<T> type, Executable act) {
        assertEquals(code, assertThrows(type, act).code());
    }
}
