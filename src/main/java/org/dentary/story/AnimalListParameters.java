package org.dentary.story;

import jakarta.ws.rs.QueryParam;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.dentary.animal.Sex;
import org.dentary.jaw.key.AgeClass;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.Role;
import org.dentary.platform.problem.InvalidInput;

/** What is asked of the list of animals, as typed in the address; an empty value is none. */
public class AnimalListParameters {
    private static final int USUAL = 100;
    private static final int MOST = 1000;
    private static final Set<String> OUTCOMES =
            Set.of("DETECTED", "PENDING", "NOT_DETECTED", "INCONCLUSIVE", "UNSUITABLE", "NOT_TESTED");

    @QueryParam("season")
    public String season;

    @QueryParam("station")
    public String station;

    @QueryParam("unit")
    public String unit;

    @QueryParam("sex")
    public String sex;

    @QueryParam("ageClass")
    public String ageClass;

    @QueryParam("outcome")
    public String outcome;

    @QueryParam("q")
    public String q;

    @QueryParam("after")
    public String after;

    @QueryParam("limit")
    public String limit;

    /** The filter for an account: a sampler sees the stations it serves. */
    AnimalFilter filter(Account reader) {
        boolean limited = reader.role() == Role.SAMPLER && !reader.stations().contains("*");
        return new AnimalFilter(
                given(season),
                given(station),
                given(unit),
                oneOf("sex", given(sex), names(Sex.values())),
                oneOf("ageClass", given(ageClass), names(AgeClass.values())),
                oneOf("outcome", given(outcome), OUTCOMES.stream().sorted().toList()),
                given(q),
                limited ? reader.stations().toArray(String[]::new) : null);
    }

    String after() {
        return given(after);
    }

    /** How many to a page, in [1, 1000]; 100 when not said. */
    int limit() {
        if (given(limit) == null) {
            return USUAL;
        }
        try {
            int asked = Integer.parseInt(limit.trim());
            if (asked >= 1 && asked <= MOST) {
                return asked;
            }
        } catch (NumberFormatException e) {
            // told below, with what is allowed
        }
        throw InvalidInput.field("limit", "RANGE", "'" + limit + "' is no page size; allowed is 1 to " + MOST);
    }

    static String given(String typed) {
        return typed == null || typed.isBlank() ? null : typed.trim();
    }

    private static List<String> names(Enum<?>[] values) {
        return Arrays.stream(values).map(Enum::name).toList();
    }

    private static String oneOf(String field, String given, List<String> allowed) {
        if (given != null && !allowed.contains(given)) {
            throw InvalidInput.field(
                    field, "INVALID_VALUE", "'" + given + "' is not one of " + String.join(", ", allowed));
        }
        return given;
    }
}
