package org.dentary.portal.day;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.dentary.codes.LabelCode;
import org.dentary.codes.NotACode;
import org.dentary.plan.PlanService;
import org.dentary.plan.StationView;
import org.dentary.platform.CalendarText;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.account.Role;
import org.dentary.platform.database.Snapshot;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotAllowed;

/** The day at a station, by the station's clock; a sampler sees the stations they serve. */
@ApplicationScoped
public class DayService {
    private final DayQueries queries;
    private final PlanService plan;
    private final CurrentAccount current;
    private final Snapshot snapshot;
    private final Clock clock;

    DayService(DayQueries queries, PlanService plan, CurrentAccount current, Snapshot snapshot, Clock clock) {
        this.queries = queries;
        this.plan = plan;
        this.current = current;
        this.snapshot = snapshot;
        this.clock = clock;
    }

    /** The stations that the account may look at, in set-up order. */
    List<StationView> stations() {
        return plan.stations().stream().filter(station -> may(station.code())).toList();
    }

    /**
     * The day in numbers, all of one moment.
     *
     * @param station its code; the first that the account may look at where nothing is given
     * @param date a day; today at the station where nothing is given
     * @throws InvalidInput for what is no station or no day
     * @throws NotAllowed for a sampler who does not serve the station
     */
    StationDay day(String station, String date) {
        DayQueries.Span span = span(station, date);
        return snapshot.read(() -> {
            Map<String, Long> n = queries.counts(span);
            return new StationDay(
                    span.station(),
                    span.date(),
                    n.get("animals"),
                    n.get("error"),
                    n.get("numbered"),
                    n.get("tissue"),
                    n.get("somebody"),
                    n.get("read"),
                    n.get("kept"),
                    n.get("photographed"),
                    n.get("photos"),
                    n.get("unexamined"),
                    n.get("jars"),
                    n.get("boxed"),
                    n.get("stored"),
                    n.get("away"),
                    n.get("loose"),
                    queries.gaps(span));
        });
    }

    /**
     * Holds labels scanned off the table against the day's jars.
     *
     * @throws InvalidInput naming each line that is no code
     */
    JarCount count(String station, String date, String scanned) {
        List<String> codes = new ArrayList<>();
        List<FieldProblem> faults = new ArrayList<>();
        for (String line : (scanned == null ? "" : scanned).split("[\\r\\n,;]+")) {
            if (!line.isBlank()) {
                try {
                    codes.add(LabelCode.parse(line).value());
                } catch (NotACode fault) {
                    faults.add(new FieldProblem("codes", "NOT_A_CODE", fault.getMessage()));
                }
            }
        }
        if (!faults.isEmpty()) {
            throw InvalidInput.of(faults);
        }
        if (codes.isEmpty()) {
            throw InvalidInput.field("codes", "REQUIRED", "Scan the jars that are on the table");
        }
        return JarCount.of(queries.jars(span(station, date)), codes);
    }

    private DayQueries.Span span(String given, String date) {
        StationView station = station(given == null ? "" : given.strip());
        ZoneId zone = station.zone();
        LocalDate day = date == null || date.isBlank() ? LocalDate.now(clock.withZone(zone)) : parsed(date.strip());
        return new DayQueries.Span(
                station.code(),
                day,
                day.atStartOfDay(zone).toInstant(),
                day.plusDays(1).atStartOfDay(zone).toInstant());
    }

    private StationView station(String given) {
        if (given.isEmpty()) {
            return stations().stream()
                    .findFirst()
                    .orElseThrow(() -> new NotAllowed(
                            "STATION_NOT_SERVED", "This account serves no station; the coordinator can change that"));
        }
        StationView station = plan.station(given);
        if (!may(station.code())) {
            throw new NotAllowed(
                    "STATION_NOT_SERVED",
                    current.get().username() + " does not serve station " + given
                            + "; the coordinator can change that");
        }
        return station;
    }

    private boolean may(String station) {
        Account account = current.get();
        return account.role() != Role.SAMPLER || account.serves(station);
    }

    private static LocalDate parsed(String date) {
        try {
            return CalendarText.day(date);
        } catch (DateTimeParseException e) {
            throw InvalidInput.field("date", "INVALID_VALUE", "'" + date + "' is no day such as 2026-11-14");
        }
    }
}
