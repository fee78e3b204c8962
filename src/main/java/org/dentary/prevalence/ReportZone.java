package org.dentary.prevalence;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.dentary.plan.PlanService;
import org.dentary.plan.StationView;

/** Moments of reports on people's clocks: the time zone of most stations, of the first of them where two tie. */
@ApplicationScoped
public class ReportZone {
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("MMM d, uuuu, HH:mm z", Locale.US);

    private final PlanService plan;

    ReportZone(PlanService plan) {
        this.plan = plan;
    }

    /** The zone; UTC where no station is set up. */
    public ZoneId zone() {
        Map<ZoneId, Integer> stations = new LinkedHashMap<>();
        plan.stations().stream().map(StationView::zone).forEach(zone -> stations.merge(zone, 1, Integer::sum));
        return stations.entrySet().stream()
                .max(Comparator.comparingInt(Map.Entry::getValue))
                .map(Map.Entry::getKey)
                .orElse(ZoneId.of("UTC"));
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
