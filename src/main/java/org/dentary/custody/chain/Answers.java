package org.dentary.custody.chain;

import jakarta.ws.rs.core.Response;
import java.time.DateTimeException;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.ToIntFunction;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.Page;

/** The answers of this room: with today's version as ETag, and where a page ended. */
public final class Answers {
    private static final int MOST = 1_000;

    private Answers() {}

    /** 201 where it was written now, 200 where it was there already, with its version as ETag. */
    public static <V> Response stored(Stored<V> stored, ToIntFunction<V> version) {
        return answer(stored.created() ? 201 : 200, stored.view(), version);
    }

    /** 200 with its version as ETag. */
    public static <V> Response now(V view, ToIntFunction<V> version) {
        return answer(200, view, version);
    }

    /**
     * The limit asked for.
     *
     * @throws InvalidInput unless it is in [1, 1,000]
     */
    public static int limit(int asked) {
        return Page.size(asked, MOST);
    }

    private static <V> Response answer(int status, V view, ToIntFunction<V> version) {
        return Reply.versioned(status, view, version.applyAsInt(view));
    }

    /**
     * Reads a list from its start to its end, a page at a time, so that memory stays flat.
     *
     * @param after the page after a mark, null for the first; at most as many items as asked for
     * @param mark where a page ends that ends with an item
     */
    public static <T> void whole(BiFunction<Mark, Integer, List<T>> after, Function<T, Mark> mark, Consumer<T> each) {
        List<T> page = after.apply(null, MOST);
        while (!page.isEmpty()) {
            page.forEach(each);
            page = page.size() < MOST ? List.of() : after.apply(mark.apply(page.get(page.size() - 1)), MOST);
        }
    }

    /**
     * Where a page ended: the sorted value and the id that breaks ties.
     *
     * @param value as text
     */
    public record Mark(String value, String id) {
        /**
         * The mark that a link brought back; null where there is none.
         *
         * @param field that brought it
         * @param parse reads the sorted value
         * @throws InvalidInput if it is none
         */
        public static Mark read(String field, String text, Function<String, ?> parse) {
            if (text == null || text.isBlank()) {
                return null;
            }
            int cut = text.lastIndexOf('_');
            try {
                parse.apply(text.substring(0, Math.max(cut, 0)));
            } catch (DateTimeException e) {
                throw InvalidInput.field(
                        field,
                        "INVALID_VALUE",
                        "'" + text + "' is no mark of a page; follow the link of the page before");
            }
            return new Mark(text.substring(0, cut), text.substring(cut + 1));
        }

        @Override
        public String toString() {
            return value + "_" + id;
        }
    }
}
