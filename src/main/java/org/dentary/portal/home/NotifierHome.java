package org.dentary.portal.home;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.dentary.result.correction.CorrectionService;
import org.dentary.result.notification.NotificationService;
import org.dentary.story.Words;

/** What waits for whoever tells people: outcomes and corrections, with the oldest. */
@ApplicationScoped
class NotifierHome {
    private final NotificationService notifications;
    private final CorrectionService corrections;
    private final Clock clock;

    NotifierHome(NotificationService notifications, CorrectionService corrections, Clock clock) {
        this.notifications = notifications;
        this.corrections = corrections;
        this.clock = clock;
    }

    /** The home of a notifier: what every reader finds, what waits to be told before it. */
    Home of(Home reader) {
        var waits = notifications.waiting();
        var replaced = corrections.waiting();
        return new Home(
                reader.greeting(),
                reader.where(),
                List.of(
                        new Home.Deed("Tell people", "/notifications"),
                        new Home.Deed("A caller without a stub", "/notifications/callers"),
                        new Home.Deed("Look up an animal", "/animals")),
                List.of(
                        Tile.todo(
                                waits.count(),
                                "released outcome to tell",
                                "released outcomes to tell",
                                waits.count() == 0
                                        ? "nobody waits"
                                        : (waits.detections() == 0 ? "" : waits.detections() + " detected; ")
                                                + oldest(waits.since(), waits.timeZone()),
                                "/notifications"),
                        Tile.todo(
                                replaced.count(),
                                "correction to tell",
                                "corrections to tell",
                                replaced.count() == 0 ? "" : oldest(replaced.since(), waits.timeZone()),
                                "/corrections")),
                reader.facts(),
                reader.notices());
    }

    private String oldest(Instant since, String zone) {
        long days = Duration.between(since, clock.instant()).toDays();
        return "oldest since " + Words.asDay(LocalDate.ofInstant(since, ZoneId.of(zone))) + ", " + days
                + (days == 1 ? " day" : " days");
    }
}
