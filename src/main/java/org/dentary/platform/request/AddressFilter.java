package org.dentary.platform.request;

import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.container.ResourceInfo;
import jakarta.ws.rs.core.UriInfo;
import java.lang.reflect.Field;
import java.lang.reflect.Method;
import java.lang.reflect.Parameter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;

/**
 * Judges the address of a call to the API before anything is done: a name that the route does not ask for, a name given
 * twice and a value that is not of its kind would otherwise be passed over in silence, or answered as a place that does
 * not exist. Routes that read their address whole ({@link UriInfo} and no names) refuse what they do not know themselves.
 */
public class AddressFilter {
    /** Asked of lists that are short and told whole too. */
    private static final String LIMIT = "limit";

    private static final Map<Method, Asked> KNOWN = new ConcurrentHashMap<>();

    /** What a route asks for: the kind of each value by its name. */
    private record Asked(Map<String, Class<?>> path, Map<String, Class<?>> query, boolean whole) {}

    /** @throws InvalidInput naming every part of the address at fault */
    @ServerRequestFilter
    public void judge(RoutingContext request, ResourceInfo route, UriInfo address) {
        if (!request.request().path().startsWith("/api/") || route.getResourceMethod() == null) {
            return;
        }
        Asked asked = KNOWN.computeIfAbsent(route.getResourceMethod(), AddressFilter::asked);
        List<FieldProblem> problems = new ArrayList<>();
        asked.path()
                .forEach((name, kind) ->
                        kind(name, kind, address.getPathParameters().getFirst(name), problems));
        if (!asked.whole()) {
            address.getQueryParameters().forEach((name, values) -> query(asked.query(), name, values, problems));
        }
        if (!problems.isEmpty()) {
            throw InvalidInput.of(problems);
        }
    }

    private static void query(
            Map<String, Class<?>> known, String name, List<String> values, List<FieldProblem> problems) {
        if (!known.containsKey(name) && !name.equals(LIMIT)) {
            problems.add(new FieldProblem(
                    name,
                    "UNKNOWN_PARAMETER",
                    "'" + name + "' is not asked for here; "
                            + (known.isEmpty() ? "leave it out" : "allowed: " + String.join(", ", known.keySet()))));
        } else if (values.size() > 1 && !Collection.class.isAssignableFrom(known.getOrDefault(name, String.class))) {
            problems.add(new FieldProblem(
                    name, "GIVEN_TWICE", name + " is given " + values.size() + " times; give it once"));
        } else {
            kind(name, known.getOrDefault(name, String.class), values.get(0), problems);
        }
    }

    private static void kind(String name, Class<?> kind, String given, List<FieldProblem> problems) {
        ValueKinds.fault(kind, given).ifPresent(fault -> problems.add(new FieldProblem(name, "INVALID_VALUE", fault)));
    }

    private static Asked asked(Method route) {
        Asked asked = new Asked(new TreeMap<>(), new TreeMap<>(), false);
        boolean address = false;
        for (Parameter parameter : route.getParameters()) {
            address |= parameter.getType().equals(UriInfo.class);
            if (parameter.isAnnotationPresent(PathParam.class)) {
                asked.path().put(parameter.getAnnotation(PathParam.class).value(), parameter.getType());
            }
            if (parameter.isAnnotationPresent(QueryParam.class)) {
                asked.query().put(parameter.getAnnotation(QueryParam.class).value(), parameter.getType());
            }
            if (parameter.isAnnotationPresent(BeanParam.class)) {
                Arrays.stream(parameter.getType().getDeclaredFields())
                        .filter(field -> field.isAnnotationPresent(QueryParam.class))
                        .forEach(field -> asked.query().put(name(field), field.getType()));
            }
        }
        return new Asked(asked.path(), asked.query(), address && asked.query().isEmpty());
    }

    private static String name(Field field) {
        return field.getAnnotation(QueryParam.class).value();
    }
}
