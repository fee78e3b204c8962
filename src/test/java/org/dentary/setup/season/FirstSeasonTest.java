package org.dentary.setup.season;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.dentary.setup.list.SetUpList;
import org.junit.jupiter.api.Test;

class FirstSeasonTest {
    private static final int CAUTIONS = 31;

    @Test
    void anEmptyServiceBeginsWithItsDiseases() {
        FirstSeason first = FirstSeason.of(Map.of(SetUpList.ACCOUNTS, 1), false, false, false, CAUTIONS);
        assertEquals(0, first.done());
        assertEquals("/season/lists/diseases", first.next().href());
        assertTrue(first.steps().stream().anyMatch(step -> step.words().equals("Review the cautions: 31 to go")));
    }

    @Test
    void theOneAccountOfADeviceIsNotEnoughForAReview() {
        assertEquals(
                "/season/lists/accounts",
                FirstSeason.of(lists(), false, true, true, 0).next().href());
        assertEquals(
                "/season/lists/accounts",
                FirstSeason.of(lists(SetUpList.ACCOUNTS, 1), true, true, true, 0)
                        .next()
                        .href());
    }

    @Test
    void afterTheListsComeProtocolCautionsAndTheSeason() {
        assertEquals("/season/settings?setting=PROTOCOL_TEXT#change", next(false, false, CAUTIONS));
        assertEquals("/season/review#protocol", next(true, false, CAUTIONS));
        assertEquals("/season/review#cautions", next(true, true, CAUTIONS));
        assertEquals("/season#seasons", next(true, true, 0));
    }

    private static String next(boolean written, boolean reviewed, int cautions) {
        return FirstSeason.of(lists(), true, written, reviewed, cautions).next().href();
    }

    private static Map<SetUpList, Integer> lists(Object... other) {
        Map<SetUpList, Integer> counts = new EnumMap<>(SetUpList.class);
        List.of(SetUpList.values()).forEach(list -> counts.put(list, 2));
        if (other.length > 0) {
            counts.put((SetUpList) other[0], (Integer) other[1]);
        }
        return counts;
    }
}
