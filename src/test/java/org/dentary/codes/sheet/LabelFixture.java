package org.dentary.codes.sheet;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.dentary.codes.Minting;
import org.dentary.codes.Part;

/** Labels to print in tests. */
final class LabelFixture {

    private LabelFixture() {}

    /** As many different labels as asked, with three title lines, the second too long for any stock. */
    static List<LabelContent> labels(int count) {
        return stream(new Random(count)).limit(count).toList();
    }

    /** Labels of four parts a kit, made one at a time and without end. */
    static Stream<LabelContent> stream(Random random) {
        Minting minting = new Minting(random);
        return IntStream.iterate(0, i -> i + 1)
                .mapToObj(i -> i)
                .flatMap(i -> minting.mint().labels(Part.JAW, Part.NODE_LEFT, Part.NODE_RIGHT, Part.FORM).stream()
                        .map(code -> LabelContent.of(
                                code,
                                "Season 2026-27",
                                "Pine Ridge check station, Larkspur County, the gate north of the landing",
                                "Block 14")));
    }
}
