package org.dentary.plan;

import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Named;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Moments that belong to no one station, on the clock that most stations have; of the first of them where two tie, UTC where
 * no station is set up. Looked up once for a request. Pages say {@code cdi:planClock.told(at)}.
 */
@RequestScoped
@Named("planClock")
public class PlanClock {
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("MMM d, uuuu, HH:mm z", Locale.US);

    private final PlanService plan;
    private final Clock clock;
    private ZoneId zone;

    PlanClock(PlanService plan, Clock clock) {
        this.plan = plan;
        this.clock = clock;
    }

    /** The zone of the most stations. */
    public ZoneId zone() {
        if (zone == null) {
            Map<ZoneId, Long> stations = plan.stations().stream()
                    .collect(Collectors.groupingBy(StationView::zone, LinkedHashMap::new, Collectors.counting()));
            long most =
                    stations.values().stream().mapToLong(Long::longValue).max().orElse(0);
            zone = stations.entrySet().stream()
                    .filter(one -> one.getValue() == most)
                    .map(Map.Entry::getKey)
                    .findFirst()
                    .orElse(ZoneId.of("UTC"));
        }
        return zone;
    }

    /** The day that it is now. */
    public LocalDate today() {
        return day(clock.instant());
    }

    /** The day of a moment. */
    public LocalDate day(Instant at) {
        return LocalDate.ofInstant(at, zone());
    }

    /** A moment such as "Nov 25, 2026, 07:03 CST". */
    public String told(Instant at) {
        return MOMENT.withZone(zone()).format(at);
    }

    /** A moment given as RFC 3339. */
    public String told(String at) {
        return told(Instant.parse(at));
    }
}
