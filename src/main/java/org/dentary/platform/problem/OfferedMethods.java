package org.dentary.platform.problem;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.spi.BeanManager;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.Path;
import java.lang.annotation.Annotation;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Which methods a place takes, for the header {@code Allow} (RFC 9110, sections 10.2.1 and 15.5.6). The framework names none,
 * and takes a place for missing where another class has the longer path.
 */
@ApplicationScoped
class OfferedMethods {
    private static final Pattern PARAMETER = Pattern.compile("\\{\\s*\\w+\\s*(?::\\s*((?:[^{}]|\\{[^{}]*})+))?}");

    private final BeanManager beans;
    private List<Route> routes;

    private record Route(Pattern path, String method) {}

    OfferedMethods(BeanManager beans) {
        this.beans = beans;
    }

    /** The methods, sorted and parted by commas; empty where nothing is. */
    String at(String path) {
        TreeSet<String> methods = new TreeSet<>();
        for (Route route : routes()) {
            if (route.path().matcher(path).matches()) {
                methods.add(route.method());
            }
        }
        if (methods.contains(HttpMethod.GET)) {
            methods.add(HttpMethod.HEAD);
        }
        return String.join(", ", methods);
    }

    private synchronized List<Route> routes() {
        if (routes == null) {
            routes = beans.getBeans(Object.class, Any.Literal.INSTANCE).stream()
                    .map(bean -> bean.getBeanClass())
                    .filter(room -> room.isAnnotationPresent(Path.class))
                    .distinct()
                    .flatMap(OfferedMethods::of)
                    .toList();
        }
        return routes;
    }

    private static Stream<Route> of(Class<?> room) {
        List<Route> routes = new ArrayList<>();
        for (Method method : room.getDeclaredMethods()) {
            for (Annotation annotation : method.getAnnotations()) {
                HttpMethod http = annotation.annotationType().getAnnotation(HttpMethod.class);
                if (http != null) {
                    Path below = method.getAnnotation(Path.class);
                    String path = room.getAnnotation(Path.class).value() + "/" + (below == null ? "" : below.value());
                    routes.add(new Route(pattern(path), http.value()));
                }
            }
        }
        return routes.stream();
    }

    static Pattern pattern(String template) {
        String plain = Stream.of(template.split("/(?![^{]*})"))
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining("/", "/", ""));
        StringBuilder pattern = new StringBuilder();
        Matcher parameter = PARAMETER.matcher(plain);
        int end = 0;
        while (parameter.find()) {
            pattern.append(Pattern.quote(plain.substring(end, parameter.start())));
            pattern.append(
                    parameter.group(1) == null
                            ? "[^/]+"
                            : "(?:" + parameter.group(1).strip() + ")");
            end = parameter.end();
        }
        return Pattern.compile(pattern + Pattern.quote(plain.substring(end)) + "/?");
    }
}
