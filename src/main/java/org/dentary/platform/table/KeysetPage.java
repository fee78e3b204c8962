package org.dentary.platform.table;

import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.function.Function;
import org.dentary.platform.problem.InvalidInput;

/** A page of a list that goes on after its last row, with a link (RFC 8288) to the next page where there is one. */
public final class KeysetPage {
    private static final int USUAL = 100;
    private static final int MOST = 1_000;

    private KeysetPage() {}

    /**
     * How many to a page.
     *
     * @param asked null for the usual 100
     * @throws InvalidInput unless it is in [1, 1,000]
     */
    public static int limit(Integer asked) {
        if (asked == null) {
            return USUAL;
        }
        if (asked < 1 || asked > MOST) {
            throw InvalidInput.field(
                    "limit", "INVALID_VALUE", "limit is " + asked + "; allowed: a whole number from 1 to " + MOST);
        }
        return asked;
    }

    /**
     * The answer.
     *
     * @param rows up to one more than fit, so that it is known whether more follow
     * @param limit how many fit
     * @param parameter of the address, which names the last row shown
     * @param mark that name
     */
    public static <T> Response answer(
            List<T> rows, int limit, UriInfo address, String parameter, Function<T, String> mark) {
        List<T> shown = rows.subList(0, Math.min(limit, rows.size()));
        Response.ResponseBuilder answer = Response.ok(new ItemList<>(shown));
        if (rows.size() > limit) {
            String next = address.getRequestUriBuilder()
                    .replaceQueryParam(parameter, mark.apply(shown.get(limit - 1)))
                    .build()
                    .toString();
            answer.header(HttpHeaders.LINK, "<" + next + ">; rel=\"next\"");
        }
        return answer.build();
    }
}
