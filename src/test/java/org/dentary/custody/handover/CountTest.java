package org.dentary.custody.handover;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Counting on a made-up load: a loose jar, and a box with two jars and a bag of one more. */
class CountTest {
    private static final Map<String, String> LOAD = load();

    @Test
    void everyCodeScannedIsThere() {
        Count count = Count.of(LOAD, List.of("LOOSE", "BOX", "JAR1", "JAR2", "BAG", "JAR3"));
        assertEquals(LOAD.keySet(), count.accepted());
        assertEquals(Set.of(), count.missing());
        assertEquals(Set.of(), count.over());
    }

    @Test
    void aBoxAloneStandsForAllThatIsInIt() {
        Count count = Count.of(LOAD, List.of("BOX"));
        assertEquals(Set.of("BOX", "JAR1", "JAR2", "BAG", "JAR3"), count.accepted());
        assertEquals(Set.of("LOOSE"), count.missing());
    }

    @Test
    void onceAJarOfItIsScannedTheOthersCountByTheirOwnCodes() {
        Count count = Count.of(LOAD, List.of("BOX", "JAR1", "LOOSE"));
        assertEquals(Set.of("BOX", "JAR1", "LOOSE"), count.accepted());
        assertEquals(Set.of("JAR2", "BAG", "JAR3"), count.missing());
    }

    @Test
    void aBoxWhoseWholeContentsWereScannedIsThere() {
        assertEquals(Set.of("BAG", "JAR3"), Count.of(LOAD, List.of("JAR3")).accepted());
    }

    @Test
    void whatWasNotOfferedIsOver() {
        Count count = Count.of(LOAD, List.of("LOOSE", "STRAY"));
        assertEquals(Set.of("LOOSE"), count.accepted());
        assertEquals(Set.of("STRAY"), count.over());
    }

    private static Map<String, String> load() {
        Map<String, String> load = new HashMap<>();
        load.put("LOOSE", null);
        load.put("BOX", null);
        load.put("JAR1", "BOX");
        load.put("JAR2", "BOX");
        load.put("BAG", "BOX");
        load.put("JAR3", "BAG");
        return load;
    }
}
