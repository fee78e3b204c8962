package org.dentary.intake;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.UUID;
import org.dentary.plan.PlanService;
import org.dentary.plan.StationView;
import org.dentary.platform.account.CurrentAccount;

/** The form of a new deer, filled with what is likely at this table now. */
@ApplicationScoped
class FreshForm {
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm");

    private final PlanService plan;
    private final CurrentAccount current;
    private final Clock clock;

    FreshForm(PlanService plan, CurrentAccount current, Clock clock) {
        this.plan = plan;
        this.current = current;
        this.clock = clock;
    }

    /** @param carried what the deer before had in common with this one; may be empty */
    IntakeForm form(IntakeForm carried) {
        List<StationView> served = plan.stations().stream()
                .filter(station -> current.get().serves(station.code()))
                .toList();
        String station = carried.value("station").isEmpty()
                ? served.isEmpty() ? "" : served.get(0).code()
                : carried.value("station");
        String unit = served.stream()
                .filter(each -> each.code().equals(station) && each.unit() != null)
                .map(StationView::unit)
                .findFirst()
                .orElse("");
        ZonedDateTime now = clock.instant().atZone(zone(station));
        IntakeForm form = carried.with("station", station)
                .with("at", MINUTE.format(now))
                .with("readingId", UUID.randomUUID().toString())
                .with("clinicalSigns", "NOT_OBSERVED");
        form = defaulted(form, "managementUnit", unit);
        form = defaulted(form, "sexEvidence", "UNKNOWN");
        form = defaulted(form, "diedOn", now.toLocalDate().toString());
        form = defaulted(form, "mortalitySource", "HUNTER_HARVEST");
        form = defaulted(form, "collectionRoute", "STATION");
        form = defaulted(form, "samplingBasis", "MANDATORY");
        form = defaulted(form, "preservation", "FRESH_CHILLED");
        return defaulted(
                form,
                "species",
                plan.species().isEmpty() ? "" : plan.species().get(0).code());
    }

    /** The clock of a station; UTC where the code is none of the plan. */
    ZoneId zone(String station) {
        return plan.stations().stream()
                .filter(each -> each.code().equals(station))
                .findFirst()
                .map(StationView::zone)
                .orElse(ZoneOffset.UTC);
    }

    private static IntakeForm defaulted(IntakeForm form, String field, String value) {
        return form.value(field).isEmpty() && !value.isEmpty() ? form.with(field, value) : form;
    }
}
