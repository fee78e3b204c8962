package org.dentary.custody.chain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.dentary.custody.chain.Answers.Mark;
import org.dentary.platform.problem.InvalidInput;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class AnswersTest {
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 999, 1_000, 1_001, 2_500})
    void readsAListToItsEndWhateverItsLength(int length) {
        List<Integer> all = IntStream.range(0, length).boxed().toList();
        List<Integer> read = new ArrayList<>();
        Answers.whole(
                (after, most) -> {
                    int from = after == null ? 0 : Integer.parseInt(after.id()) + 1;
                    return all.subList(from, Math.min(length, from + most));
                },
                one -> new Mark("", one.toString()),
                read::add);
        assertEquals(all, read);
    }

    @ParameterizedTest
    @ValueSource(strings = {"x", "_", "2026-13-01_a", "2026-12-24", "a_2026-12-24"})
    void namesAMarkThatIsNone(String text) {
        InvalidInput refusal = assertThrows(InvalidInput.class, () -> Mark.read("after", text, LocalDate::parse));
        assertEquals("after", refusal.errors().get(0).field());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " "})
    void withoutAMarkTheListBegins(String text) {
        assertNull(Mark.read("before", text, Instant::parse));
    }
}
