package org.dentary.jaw.exam;

import java.util.List;
import org.dentary.jaw.key.JawKey;
import org.dentary.jaw.key.JawObservation;
import org.dentary.jaw.key.JawObservation.Dentine;
import org.dentary.jaw.key.JawObservation.Eruption;
import org.dentary.jaw.key.JawObservation.SixthTooth;
import org.dentary.jaw.key.JawObservation.ThirdTooth;

/**
 * A row of the printed key's table: what is seen. Its class is not written here but asked of {@link JawKey}.
 *
 * @param seen in words
 */
record SheetExample(String seen, JawObservation observation) {
    static final List<SheetExample> ALL = List.of(
            new SheetExample(
                    "Fewer than six cheek teeth, third tooth with three cusps",
                    observation(5, 3, null, null, null, null)),
            new SheetExample(
                    "Six, third tooth with three cusps, no dentine on the sixth",
                    observation(6, 3, null, null, Eruption.ERUPTING, Dentine.NOT_EXPOSED)),
            new SheetExample(
                    "Six, third tooth with two cusps, coming up or full, no dentine on third or sixth",
                    observation(6, 2, Eruption.FULL, Dentine.NOT_EXPOSED, Eruption.FULL, Dentine.NOT_EXPOSED)),
            new SheetExample(
                    "Six, third tooth with two cusps and sixth both fully up, a defined line on both",
                    observation(6, 2, Eruption.FULL, Dentine.DEFINED, Eruption.FULL, Dentine.DEFINED)),
            new SheetExample(
                    "As the last, but only a trace on the sixth",
                    observation(6, 2, Eruption.FULL, Dentine.DEFINED, Eruption.FULL, Dentine.TRACE)),
            new SheetExample(
                    "Fewer than six, third tooth with two cusps",
                    observation(5, 2, Eruption.FULL, Dentine.NOT_EXPOSED, Eruption.NOT_ERUPTED, Dentine.NOT_EXPOSED)),
            new SheetExample(
                    "The back of the row cannot be seen",
                    new JawObservation(
                            null,
                            null,
                            JawObservation.RowSeen.FRONT_ONLY,
                            null,
                            null,
                            null,
                            null,
                            null,
                            null,
                            null,
                            null,
                            null)));

    private static JawObservation observation(
            int count, int cusps, Eruption third, Dentine thirdDentine, Eruption sixth, Dentine sixthDentine) {
        return new JawObservation(
                null,
                null,
                null,
                count,
                new ThirdTooth(cusps, third, thirdDentine, null, null),
                new SixthTooth(sixth, sixthDentine),
                null,
                null,
                null,
                null,
                null,
                null);
    }
}
