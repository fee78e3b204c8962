package org.dentary.custody.chain;

import jakarta.ws.rs.core.Response;
import java.time.DateTimeException;
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
     * Where a page ended: the sorted value and the id that breaks ties.
     *
     * @param value as text
     */
    public record Mark(String value, String id) {
        public static Mark read(String text) {
            if (text == null || text.isBlank()) {
                return null;
            }
            int cut = text.lastIndexOf('_');
            if (cut < 0) {
                throw broken(text);
            }
            return new Mark(text.substring(0, cut), text.substring(cut + 1));
        }

        public <T> T at(Function<String, T> parse) {
            try {
                return parse.apply(value);
            } catch (DateTimeException e) {
                throw broken(toString());
            }
        }

        @Override
        public String toString() {
            return value + "_" + id;
        }

        private static InvalidInput broken(String text) {
            return InvalidInput.field(
                    "before",
                    "INVALID_VALUE",
                    "'" + text + "' is no mark of a page; follow the Link of the page before");
        }
    }
}
