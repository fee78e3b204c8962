package org.dentary.platform.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.dentary.platform.problem.InvalidInput;
import org.junit.jupiter.api.Test;

/** A page leads on only where something follows it (RFC 8288: a link of relation "next" names the next in a series). */
class PageTest {
    @Test
    void aFullPageLeadsOnOnlyWhereOneMoreWasFound() {
        assertEquals("b", Page.of(List.of("a", "b", "c"), 2).next(last -> last));
        assertEquals(List.of("a", "b"), Page.of(List.of("a", "b", "c"), 2).items());
        assertNull(Page.of(List.of("a", "b"), 2).next(last -> last));
        assertNull(Page.of(List.of(), 2).next(last -> last));
    }

    @Test
    void refusesASizeThatIsNone() {
        assertEquals(1, Page.size(1, 10));
        assertEquals(10, Page.size(10, 10));
        assertThrows(InvalidInput.class, () -> Page.size(0, 10));
        assertThrows(InvalidInput.class, () -> Page.size(11, 10));
    }
}
