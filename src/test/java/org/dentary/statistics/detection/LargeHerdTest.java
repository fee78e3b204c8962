package org.dentary.statistics.detection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import org.dentary.statistics.OutOfDomain;
import org.dentary.statistics.Vectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LargeHerdTest {

    @Test
    void chancesAgreeWithR() {
        for (NamedCsvRecord row : Vectors.read("detection.csv")) {
            double prevalence = (double) Vectors.integer(row, "infected") / Vectors.integer(row, "population");
            if (prevalence > 0) {
                double chance = new LargeHerd(prevalence)
                        .detection(Vectors.integer(row, "tested"), Vectors.number(row, "sensitivity"));
                Vectors.same(row, "binomial", chance, Vectors.CLOSED);
            }
        }
    }

    /** Number to detect in a large herd, the values printed in textbooks (from memory); 95 % and 99 %. */
    @ParameterizedTest
    @CsvSource({
        ".001, 2995, 4603", ".005, 598, 919", ".01, 299, 459", ".02, 149, 228",
        ".05, 59, 90", ".1, 29, 44", ".2, 14, 21", ".5, 5, 7",
    })
    void reproducesTheClassicNumbers(double designPrevalence, int at95, int at99) {
        LargeHerd herd = new LargeHerd(designPrevalence);
        assertEquals(at95, herd.required(1, 0.95));
        assertEquals(at99, herd.required(1, 0.99));
        assertTrue(herd.detection(at95, 1) >= 0.95 && herd.detection(at95 - 1, 1) < 0.95);
    }

    @Test
    void nobodyTestedShowsNothingAndAllInfectedShowAtOnce() {
        assertEquals(0, new LargeHerd(0.01).detection(0, 1));
        assertEquals(0, new LargeHerd(1).detection(0, 1));
        assertEquals(1, new LargeHerd(1).detection(1, 1));
        assertThrows(OutOfDomain.class, () -> new LargeHerd(0));
        assertThrows(OutOfDomain.class, () -> new LargeHerd(0.01).detection(-1, 1));
        assertThrows(OutOfDomain.class, () -> new LargeHerd(0.01).required(1, 1));
    }
}
