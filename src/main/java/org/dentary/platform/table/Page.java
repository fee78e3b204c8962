package org.dentary.platform.table;

import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.function.Function;
import org.dentary.platform.problem.InvalidInput;

/**
 * A page of a list that is ordered by a key.
 *
 * @param items what it holds
 * @param more whether anything follows it
 */
public record Page<T>(List<T> items, boolean more) {
    public Page {
        items = List.copyOf(items);
    }

    /** The page of at most so many, of a list that was asked for one more than that: only the one more tells what follows. */
    public static <T> Page<T> of(List<T> oneMore, int most) {
        return new Page<>(oneMore.subList(0, Math.min(most, oneMore.size())), oneMore.size() > most);
    }

    /**
     * The size asked for.
     *
     * @throws InvalidInput unless it is in [1, most]
     */
    public static int size(int asked, int most) {
        if (asked < 1 || asked > most) {
            throw InvalidInput.field(
                    "limit", "INVALID_VALUE", "limit is " + asked + "; allowed: a whole number from 1 to " + most);
        }
        return asked;
    }

    /** Where the next page begins, told by the last item; null where nothing follows. */
    public <M> M next(Function<T, M> mark) {
        return more ? mark.apply(items.get(items.size() - 1)) : null;
    }

    /** The same page of what its items become. */
    public <U> Page<U> map(Function<T, U> to) {
        return new Page<>(items.stream().map(to).toList(), more);
    }

    /** The page as the API answers it; where more follow, with a link (RFC 8288) to them. */
    public Response answer(UriInfo address, String parameter, Function<T, ?> mark) {
        return linked(Response.ok(new ItemList<>(items)), address, parameter, next(mark))
                .build();
    }

    /** The answer with a link to the page that begins after the mark; without one where that is null. */
    public static Response.ResponseBuilder linked(
            Response.ResponseBuilder answer, UriInfo address, String parameter, Object mark) {
        return mark == null
                ? answer
                : answer.header(
                        HttpHeaders.LINK,
                        "<"
                                + address.getRequestUriBuilder()
                                        .replaceQueryParam(parameter, mark)
                                        .build()
                                + ">; rel=\"next\"");
    }
}
