package org.dentary.kit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.dentary.SeasonFixture;
import org.dentary.codes.LabelCode;
import org.dentary.codes.Minting;
import org.dentary.codes.Part;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class KitServiceTest {
    @Inject
    KitService kits;

    @Inject
    KitFixture fixture;

    @Test
    void aLabelIsFoundHoweverItIsTyped() {
        LabelOfKit jaw = fixture.aKit(Part.JAW, Part.NODE_LEFT).get(0);
        String grouped = LabelCode.parse(jaw.code()).grouped().toLowerCase(Locale.ROOT);
        LabelView label = kits.label(" " + grouped + "\r");
        assertEquals(jaw.code(), label.code());
        assertEquals("JAW", label.part());
        assertEquals(jaw.kit(), label.kitBound());
        assertEquals(SeasonFixture.STATION, label.station());
        assertEquals(SeasonFixture.SEASON, label.season());
        assertFalse(label.voided());
    }

    @Test
    void aCodeThatWasNeverIssuedIsUnknownAndAStringThatIsNoneIsRefusedByItsCharacter() {
        String stranger = new Minting().mint().label(Part.JAW).value();
        assertEquals(
                "LABEL_UNKNOWN",
                assertThrows(NotFound.class, () -> kits.label(stranger)).code());
        InvalidInput refusal = assertThrows(InvalidInput.class, () -> kits.label("A2C4B6H8JK"));
        assertEquals("NOT_A_CODE", refusal.code());
        assertTrue(refusal.getMessage().contains("character 5 is B"), refusal.getMessage());
    }

    @Test
    void aKitIsMeantByItsEightCharactersOrByAnyLabelBoundToIt() {
        LabelOfKit jaw = fixture.aKit(Part.JAW).get(0);
        LabelOfKit other = fixture.aKit(Part.JAW).get(0);
        assertEquals(
                jaw.kit(), kits.kit(jaw.kit().substring(0, 4) + "-" + jaw.kit().substring(4)));
        assertEquals(jaw.kit(), kits.kit(jaw.code()));
        kits.rebind(List.of(jaw.code()), other.kit());
        assertEquals(other.kit(), kits.kit(jaw.code()), "every look-up goes through what the label is bound to");
        assertEquals(jaw.kit(), kits.label(jaw.code()).kitPrinted());
        assertEquals(jaw.kit(), kits.kit(jaw.kit()), "the kit itself stays itself");
        assertThrows(NotFound.class, () -> kits.kit(new Minting().mint().value()));
        assertThrows(InvalidInput.class, () -> kits.kit("no"));
    }

    @Test
    void manyLabelsComeInTheOrderGivenAndEveryFaultIsNamedAtOnce() {
        List<LabelOfKit> kit = fixture.aKit(Part.JAW, Part.NODE_LEFT, Part.STUB);
        List<String> codes = List.of(kit.get(0).code(), kit.get(2).code());
        assertEquals(codes, kits.labels(codes).stream().map(LabelView::code).toList());
        InvalidInput faults = assertThrows(
                InvalidInput.class, () -> kits.labels(List.of("x", kit.get(0).code(), "")));
        assertEquals(
                List.of("codes[0]", "codes[2]"),
                faults.errors().stream().map(e -> e.field()).toList());
        String stranger = new Minting().mint().label(Part.JAW).value();
        assertEquals(
                "codes[1]",
                assertThrows(
                                NotFound.class,
                                () -> kits.labels(List.of(kit.get(0).code(), stranger)))
                        .errors()
                        .get(0)
                        .field());
        assertEquals(
                Set.of(kit.get(1).code()),
                kits.find(List.of("x", stranger, kit.get(1).code())).keySet());
        assertEquals(List.of(), kits.labels(List.of()));
    }
}
