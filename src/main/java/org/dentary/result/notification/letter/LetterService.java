package org.dentary.result.notification.letter;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.dentary.animal.vault.Contact;
import org.dentary.animal.vault.ContactService;
import org.dentary.cautions.CautionService;
import org.dentary.cautions.CautionView;
import org.dentary.cautions.Hazard;
import org.dentary.plan.PlanService;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.PlanSettings;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.result.notification.NotificationItem;
import org.dentary.result.notification.NotificationQueries;
import org.dentary.result.notification.NotificationRules;
import org.dentary.result.notification.NotificationService;

/**
 * Letters about released outcomes, in reviewed wording with the health agency's advice as the plan has it. A letter is
 * made anew each time it is asked for and kept nowhere; making one reads the contact, which is audited.
 */
@ApplicationScoped
public class LetterService {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("MMMM d, uuuu", Locale.US);

    private final NotificationService notifications;
    private final NotificationQueries queries;
    private final WordingService wordings;
    private final ContactService contacts;
    private final PlanService plan;
    private final CautionService cautions;
    private final LetterPdf pdf;
    private final Clock clock;

    LetterService(
            NotificationService notifications,
            NotificationQueries queries,
            WordingService wordings,
            ContactService contacts,
            PlanService plan,
            CautionService cautions,
            LetterPdf pdf,
            Clock clock) {
        this.notifications = notifications;
        this.queries = queries;
        this.wordings = wordings;
        this.contacts = contacts;
        this.plan = plan;
        this.cautions = cautions;
        this.pdf = pdf;
        this.clock = clock;
    }

    /**
     * The letter for one animal and disease.
     *
     * @param purpose why the contact is read; kept in the audit
     * @throws RuleBroken (409) where nothing may be told yet, a detection was not called about first, the wording is not
     *     reviewed or the plan lacks what letters give
     */
    @Transactional
    public byte[] letter(String kit, String disease, String purpose) {
        if (purpose == null || purpose.isBlank()) {
            throw InvalidInput.field("purpose", "REQUIRED", "Say why the contact is read; the audit keeps it");
        }
        NotificationService.Told told = notifications.told(kit, disease);
        NotificationItem item = told.item();
        requireTellable(told);
        WordingView wording = wordings.inForce(item.outcome());
        Optional<WordingView> putRight = item.state().equals("TELL_AGAIN")
                ? Optional.of(wordings.inForce(WordingRules.CORRECTION))
                : Optional.empty();
        PlanSettings settings = plan.settings();
        Map<String, String> values = values(item, settings);
        Contact contact = contacts.read(item.kit(), purpose.strip()).contact();
        if (contact == null || (blank(contact.name()) && blank(contact.address()))) {
            throw new RuleBroken(
                    "NO_ADDRESS", "No name or address is kept for kit " + item.kit() + "; tell it by telephone");
        }
        LocalDate today = LocalDate.ofInstant(clock.instant(), ZoneId.of(item.timeZone()));
        return pdf.draw(new LetterPdf.Letter(
                lines(text(settings, PlanSetting.LETTER_SENDER, item)),
                Stream.concat(Stream.ofNullable(contact.name()), lines(contact.address()).stream())
                        .toList(),
                DAY.format(today),
                (putRight.isPresent() ? "Corrected result" : "Result") + " of your " + values.get("species") + ", "
                        + item.diseaseName() + ": " + NotificationRules.subject(item.outcome()),
                Stream.concat(
                                putRight.stream()
                                        .flatMap(one -> WordingRules.paragraphs(one.wording(), values).stream()),
                                WordingRules.paragraphs(wording.wording(), values).stream())
                        .toList(),
                cautions.at(Hazard.NOTIFICATION, item.disease()).stream()
                        .map(CautionView::text)
                        .toList(),
                "Kit " + values.get("kit") + ", wording " + reference(wording)
                        + putRight.map(one -> ", " + reference(one)).orElse("")));
    }

    private static String reference(WordingView wording) {
        return NotificationRules.words(wording.outcome()).replace(' ', '-') + " " + wording.edition();
    }

    private static void requireTellable(NotificationService.Told told) {
        NotificationItem item = told.item();
        if (item.state().equals("HELD")) {
            throw new RuleBroken(
                    "LABELS_IN_DOUBT",
                    "A label of kit " + item.kit() + " is in doubt; no letter leaves until that is settled");
        }
        boolean called = told.attempts().stream()
                .anyMatch(one -> one.correctedBy() == null
                        && one.outcome().equals(item.outcome())
                        && (one.channel().equals("PHONE") || one.channel().equals("IN_PERSON")));
        if (item.outcome().equals("DETECTED") && !called) {
            throw new RuleBroken(
                    "CALL_FIRST",
                    "A detection is told by telephone first; record the call, reached or not, then make the letter");
        }
    }

    private Map<String, String> values(NotificationItem item, PlanSettings settings) {
        NotificationQueries.Released animal =
                queries.released(List.of(item.kit())).get(0);
        Map<String, String> values = new HashMap<>();
        values.put("agency", needed(settings, PlanSetting.HEALTH_AGENCY, item));
        values.put("agencyPhone", needed(settings, PlanSetting.HEALTH_AGENCY_NUMBER, item));
        values.put("agencyAdvice", needed(settings, PlanSetting.HEALTH_AGENCY_ADVICE, item));
        values.put("resultsPhone", needed(settings, PlanSetting.RESULTS_NUMBER, item));
        needed(settings, PlanSetting.LETTER_SENDER, item);
        values.put("species", animal.speciesName().toLowerCase(Locale.ROOT));
        values.put("diedOn", animal.diedOn() == null ? "a day that is not recorded" : DAY.format(animal.diedOn()));
        values.put("kit", item.kit().substring(0, 4) + "-" + item.kit().substring(4));
        values.put("registration", animal.registration().isEmpty() ? "" : ", registration " + animal.registration());
        values.put("disease", item.diseaseName());
        values.put("toldBefore", item.toldBefore() == null ? "" : NotificationRules.words(item.toldBefore()));
        return values;
    }

    private static String needed(PlanSettings settings, PlanSetting setting, NotificationItem item) {
        String text = text(settings, setting, item);
        if (text.isBlank()) {
            throw new RuleBroken(
                    "PLAN_LACKS_ADVICE",
                    "The plan does not set " + setting + " yet (" + setting.meaning()
                            + "); the coordinator sets it, then the letter can be made");
        }
        return text;
    }

    private static String text(PlanSettings settings, PlanSetting setting, NotificationItem item) {
        return settings.text(setting, item.season(), null, item.unit());
    }

    private static List<String> lines(String text) {
        return text == null ? List.of() : text.lines().map(String::strip).toList();
    }

    private static boolean blank(String text) {
        return text == null || text.isBlank();
    }
}
