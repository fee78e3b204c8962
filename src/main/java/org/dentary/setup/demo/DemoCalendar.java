package org.dentary.setup.demo;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;

/** The day up to which the demo is played, and clock times as its stations tell them. */
final class DemoCalendar {
    static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
    static final List<String> WEST = List.of("ESKER", "GARROW");

    private DemoCalendar() {}

    /** Whether what is to happen on that day has happened. */
    static boolean isOver(LocalDate day) {
        return day.isBefore(TODAY);
    }

    static String at(Deer d, int hour, int minute) {
        return at(d.station(), d.diedOn(), hour, minute);
    }

    static String at(String station, LocalDate day, int hour, int minute) {
        ZoneId zone = ZoneId.of(WEST.contains(station) ? "America/Denver" : "America/Chicago");
        return OffsetDateTime.from(day.atTime(hour, minute).atZone(zone)).toString();
    }
}
