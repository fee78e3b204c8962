package org.dentary.intake.putright;

import static org.dentary.intake.putright.SwapFixture.leaving;
import static org.dentary.intake.putright.SwapFixture.stands;
import static org.dentary.intake.putright.SwapFixture.story;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.UUID;
import org.dentary.codes.Part;
import org.dentary.custody.identity.IdentityFixture;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.result.FindingsFixture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Where swapped labels and duplicate kits meet: what is in doubt of one kit is in doubt of the animal. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class SwapOfLinkedKitsTest {
    @Inject
    SwapFixture swaps;

    @Inject
    IdentityFixture people;

    @Inject
    IntakeFixture intake;

    @Inject
    FindingsFixture laboratory;

    private String unit;
    private Deer counted;
    private Deer duplicate;
    private Deer third;
    private Deer other;
    private String code;

    /** One deer under three kits, its tissue under the second; and another deer. */
    @BeforeEach
    void twoDeerUnderFourKits() {
        unit = laboratory.unitWithoutTheDisease();
        counted = withoutTissue();
        duplicate = people.received(unit);
        third = withoutTissue();
        other = withoutTissue();
        code = duplicate.label(Part.NODE_LEFT);
        swaps.links(duplicate, counted).statusCode(201);
        swaps.links(third, counted).statusCode(201);
        people.finds(duplicate, "NOT_DETECTED");
    }

    private Deer withoutTissue() {
        Deer deer = intake.aDeer();
        intake.take(deer, intake.facts().put("managementUnit", unit));
        return deer;
    }

    @Test
    void aSwapThatNamesADuplicateHoldsTheAnimalUnderEveryKitUntilItIsRefused() {
        assertEquals(1, leaving(unit, "COUNTED"), "the tissue of the duplicate counts");
        String swap = swaps.asked(code, other);
        stands(counted, "NOT_DETECTED", "NOT_ATTRIBUTABLE");
        stands(other, "NOT_TESTED", "NOT_ATTRIBUTABLE");
        for (Deer each : new Deer[] {counted, duplicate, third, other}) {
            story(each).body("notAttributable", equalTo(true)).body("reAttributions", hasSize(1));
        }
        story(counted).body("next.what", hasItem("PUT_RIGHT"));
        assertEquals(0, leaving(unit, "COUNTED"));
        assertEquals(2, leaving(unit, "NOT_ATTRIBUTABLE"));
        assertEquals(2, leaving(unit, "DUPLICATE"));
        swaps.refused(swap);
        for (Deer each : new Deer[] {counted, duplicate, third, other}) {
            story(each).body("notAttributable", equalTo(false));
        }
        assertEquals(1, leaving(unit, "COUNTED"));
        assertEquals(1, leaving(unit, "NO_SPECIMEN"));
    }

    @Test
    void aSwapThatNamesTheCountedKitHoldsItsDuplicatesToo() {
        Deer mine = people.received(unit);
        String swap = swaps.asked(mine.label(Part.NODE_LEFT), counted);
        story(duplicate).body("notAttributable", equalTo(true));
        swaps.confirmed(swap);
        stands(mine, "NOT_TESTED", "");
        story(duplicate).body("notAttributable", equalTo(false));
    }

    @Test
    void onceConfirmedTheCountedKitHasNoTissueAndTheOtherHasTheFinding() {
        swaps.confirmed(swaps.asked(code, other));
        stands(counted, "NOT_TESTED", "");
        stands(duplicate, "NOT_TESTED", "DUPLICATE");
        stands(other, "NOT_DETECTED", "");
        assertEquals(1, leaving(unit, "NO_SPECIMEN"));
        assertEquals(1, leaving(unit, "COUNTED"));
        swaps.confirmed(swaps.asked(code, third));
        stands(counted, "NOT_DETECTED", "");
        stands(other, "NOT_TESTED", "");
        assertEquals(1, leaving(unit, "COUNTED"));
    }

    @Test
    void aKitThatIsLinkedWhileASwapIsOpenIsHeldAndOneThatIsUnlinkedIsReleased() {
        Deer fourth = withoutTissue();
        String swap = swaps.asked(code, other);
        swaps.links(fourth, counted).statusCode(201);
        story(fourth).body("notAttributable", equalTo(true));
        swaps.links(withoutTissue(), other).statusCode(201);
        swaps.unlinks(third);
        stands(third, "NOT_TESTED", "");
        swaps.unlinks(duplicate);
        stands(counted, "NOT_TESTED", "");
        stands(duplicate, "NOT_DETECTED", "NOT_ATTRIBUTABLE");
        story(fourth).body("notAttributable", equalTo(false));
        swaps.links(duplicate, counted).statusCode(201);
        stands(counted, "NOT_DETECTED", "NOT_ATTRIBUTABLE");
        swaps.confirmed(swap);
        stands(counted, "NOT_TESTED", "");
        stands(other, "NOT_DETECTED", "");
    }

    @Test
    void betweenKitsOfOneAnimalThereIsNothingToSwap() {
        for (Deer to : new Deer[] {counted, third}) {
            swaps.asks("coordinator", "/specimens/" + code + "/re-attribution/" + UUID.randomUUID(), to)
                    .statusCode(409)
                    .body("code", equalTo("SAME_ANIMAL"))
                    .body("detail", containsString("undo the link first"));
        }
        String swap = swaps.asked(code, other);
        swaps.links(other, counted).statusCode(409).body("code", equalTo("SWAP_OPEN_BETWEEN"));
        swaps.refused(swap);
        swaps.links(other, counted).statusCode(201);
        swaps.asks("coordinator", "/specimens/" + code + "/re-attribution/" + UUID.randomUUID(), other)
                .statusCode(409)
                .body("code", equalTo("SAME_ANIMAL"));
    }

    @Test
    void tissueTakenUnderADuplicateIsTheAnimals() {
        swaps.confirmed(swaps.asked(code, other));
        String later = third.label(Part.NODE_RIGHT);
        intake.put(
                        "sampler",
                        "/animals/" + third.kit() + "/specimens/" + later,
                        intake.specimen(later, "MEDIAL_RETROPHARYNGEAL_NODE", "RIGHT"))
                .statusCode(201);
        stands(counted, "PENDING", "");
        assertEquals(1, leaving(unit, "PENDING"));
        assertEquals(0, leaving(unit, "NO_SPECIMEN"));
    }

    @Test
    void anIdentityExceptionOfOneKitsTissueHoldsTheAnimalUnderEveryKit() {
        UUID exception = people.asked(code);
        for (Deer each : new Deer[] {counted, duplicate, third}) {
            story(each).body("notAttributable", equalTo(true)).body("identityExceptions", hasSize(1));
        }
        people.refused(exception);
        stands(counted, "NOT_TESTED", "NOT_ATTRIBUTABLE");
        story(third).body("notAttributable", equalTo(true));
        String later = third.label(Part.NODE_RIGHT);
        intake.put(
                        "sampler",
                        "/animals/" + third.kit() + "/specimens/" + later,
                        intake.specimen(later, "MEDIAL_RETROPHARYNGEAL_NODE", "RIGHT"))
                .statusCode(201);
        stands(counted, "PENDING", "");
        story(duplicate).body("notAttributable", equalTo(false));
        swaps.unlinks(third);
        stands(counted, "NOT_TESTED", "NOT_ATTRIBUTABLE");
        stands(third, "PENDING", "");
    }

    @Test
    void whoMayOnlyAskWithdrawsTheirOwnAndRefusesNobodyElses() {
        String swap = swaps.asked(code, other);
        swaps.refuses("sampler", swap).statusCode(403).body("code", equalTo("NOT_YOURS_TO_REFUSE"));
        swaps.refuses("coordinator", swap).statusCode(200);
    }
}
