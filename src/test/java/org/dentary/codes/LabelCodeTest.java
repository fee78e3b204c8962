package org.dentary.codes;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.exc.ValueInstantiationException;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class LabelCodeTest {

    private static final Map<String, String> WORDS = Map.of(
            "CHECK", "the check character does not fit",
            "FOREIGN", "which codes do not use",
            "FIRST", "every code begins with a letter",
            "PART", "names the part",
            "EMPTY", "nothing was scanned or typed",
            "LENGTH", "characters");

    @ParameterizedTest(name = "{0}")
    @CsvFileSource(resources = "label-codes.csv", numLinesToSkip = 1, ignoreLeadingAndTrailingWhitespace = false)
    void readsWhatWasTypedOrSaysWhatIsWrong(
            String desc, String source, String typed, String code, Part part, String expectError, Integer position) {
        if (expectError == null) {
            LabelCode read = LabelCode.parse(typed);
            assertEquals(code, read.value());
            assertEquals(part, read.part());
            assertEquals(code, read.kit().label(part).value());
            return;
        }
        NotACode refusal = assertThrows(NotACode.class, () -> LabelCode.parse(typed));
        assertTrue(refusal.reason().contains(WORDS.get(expectError)), refusal.reason());
        if (position != null) {
            assertEquals(position, refusal.position());
        }
    }

    @Test
    void severalAreTypedInTheirGroupsOrNot() {
        assertEquals(
                List.of("A000-0000-JC", "A0000000JC", "a000-0000-jc", "A0000000JC", "A000", "0000"),
                TypedText.several("A000 0000 JC\r\nA0000000JC, a000 0000\tjc;]C0A0000000JC\u001d\n\nA000 0000"));
        assertEquals(List.of(), TypedText.several(null));
        assertEquals(List.of(), TypedText.several(" ,; \n"));
    }

    @Test
    void printsFourFourTwo() {
        assertEquals(
                "A000-0000-JC", LabelCode.of(new KitStem("A0000000"), Part.JAW).grouped());
    }

    @Test
    void namesTheCharacterWhenOneLookAlikeExplainsTheFailedCheck() {
        NotACode refusal = slipOf(Slip.Kind.LOOK_ALIKE);
        Slip slip = refusal.slips().get(0);
        assertEquals(slip.position(), refusal.position());
        assertEquals(slip.typed(), refusal.character());
        assertTrue(refusal.getMessage().contains("character " + slip.position()), refusal.getMessage());
    }

    @Test
    void namesBothCharactersOfASwap() {
        NotACode refusal = slipOf(Slip.Kind.SWAPPED);
        int first = refusal.position();
        assertTrue(refusal.reason().contains("characters " + first + " and " + (first + 1)), refusal.reason());
    }

    @Test
    void everySlipOfferedWouldMakeACode() {
        for (KitStem kit : new Minting(new Random(7)).mint(300)) {
            String code = kit.label(Part.NODES).value();
            String typed = code.substring(0, 4) + (code.charAt(4) == '7' ? '8' : '7') + code.substring(5);
            NotACode refusal = assertThrows(NotACode.class, () -> LabelCode.parse(typed));
            for (Slip slip : refusal.slips()) {
                int from = slip.position() - 1;
                assertEquals(
                        slip.typed(), typed.substring(from, from + slip.typed().length()));
                LabelCode.parse(typed.substring(0, from)
                        + slip.perhaps()
                        + typed.substring(from + slip.perhaps().length()));
            }
            assertTrue(refusal.slips().size() <= 3);
        }
    }

    @Test
    void theConstructorForgivesNothing() {
        String code = LabelCode.of(new KitStem("A0000000"), Part.JAW).value();
        assertThrows(NotACode.class, () -> new LabelCode(code.toLowerCase()));
        assertThrows(NotACode.class, () -> new LabelCode(" " + code));
        assertThrows(NotACode.class, () -> new KitStem("a0000000"));
    }

    @Test
    void aKitIsReadFromItselfOrFromAnyOfItsLabels() {
        KitStem kit = new KitStem("K1111111");
        assertEquals(kit, KitStem.parse(" kiii-1111 "));
        assertEquals(kit, KitStem.parse(kit.label(Part.OBEX).grouped()));
        assertEquals("K111-1111", kit.grouped());
        NotACode refusal = assertThrows(NotACode.class, () -> KitStem.parse("11111111"));
        assertEquals(1, refusal.position());
        assertThrows(NotACode.class, () -> KitStem.parse("K11111"));
        assertThrows(NotACode.class, () -> KitStem.parse(null));
    }

    @Test
    void travelsInJsonAsAString() throws JsonProcessingException {
        ObjectMapper json = new ObjectMapper();
        LabelCode code = new KitStem("A0000000").label(Part.FORM);
        assertEquals("\"" + code.value() + "\"", json.writeValueAsString(code));
        assertEquals(code, json.readValue("\"" + code.grouped().toLowerCase() + "\"", LabelCode.class));
        assertEquals(code.kit(), json.readValue("\"A0000000\"", KitStem.class));
        ValueInstantiationException refusal =
                assertThrows(ValueInstantiationException.class, () -> json.readValue("\"A000\"", LabelCode.class));
        assertTrue(refusal.getCause() instanceof NotACode);
    }

    @Test
    void aMessageNeverEchoesControlCharactersNorWithoutEnd() {
        NotACode refusal = assertThrows(NotACode.class, () -> LabelCode.parse("\u0007" + "A".repeat(5000)));
        assertEquals("A".repeat(40) + "...", refusal.given());
    }

    @Test
    void partsHaveDifferentCharactersOfTheAlphabet() {
        String characters = Stream.of(Part.values())
                .map(part -> String.valueOf(part.character()))
                .collect(Collectors.joining());
        assertEquals(Part.values().length, characters.chars().distinct().count());
        assertTrue(
                characters.chars().allMatch(c -> CheckSystem.LABELS.alphabet().indexOf(c) >= 0));
    }

    @Test
    void mintsDifferentKitsThatNoSpreadsheetTakesForANumberOrDate() {
        List<KitStem> kits = new Minting().mint(5000);
        assertEquals(5000, kits.stream().distinct().count());
        assertTrue(kits.stream().allMatch(kit -> Character.isLetter(kit.value().charAt(0))));
        assertTrue(kits.stream().noneMatch(kit -> kit.value().matches("(JAN|MAR|APR|MAY).*")));
        long firsts = kits.stream().map(kit -> kit.value().charAt(0)).distinct().count();
        assertEquals(19, firsts);
    }

    /** A refusal that one slip of the kind explains, found by making such slips in minted codes. */
    private static NotACode slipOf(Slip.Kind kind) {
        for (KitStem kit : new Minting(new Random(11)).mint(500)) {
            String code = kit.label(Part.JAW).value();
            String typed = kind == Slip.Kind.SWAPPED
                    ? code.substring(0, 5) + code.charAt(6) + code.charAt(5) + code.substring(7)
                    : code.replace('Y', 'V');
            if (typed.equals(code)) {
                continue;
            }
            NotACode refusal = assertThrows(NotACode.class, () -> LabelCode.parse(typed));
            if (refusal.slips().size() == 1 && refusal.slips().get(0).kind() == kind) {
                return refusal;
            }
        }
        throw new AssertionError("No slip of kind " + kind + " was explained alone");
    }
}
