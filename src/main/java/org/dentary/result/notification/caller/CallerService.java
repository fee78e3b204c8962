package org.dentary.result.notification.caller;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.dentary.animal.vault.ContactKey;
import org.dentary.animal.vault.ContactService;
import org.dentary.result.notification.NotificationQueries;
import org.dentary.result.notification.NotificationRules;

/** Finds the animals of a caller without a stub; every search is audited with its purpose, found or not. */
@ApplicationScoped
public class CallerService {
    private final ContactService contacts;
    private final NotificationQueries queries;

    CallerService(ContactService contacts, NotificationQueries queries) {
        this.contacts = contacts;
        this.queries = queries;
    }

    /** The animals found, newest first, at most fifty; empty where nobody is known so. */
    @Transactional
    public List<CallerMatch> search(CallerSearch search) {
        List<String> kits = contacts.find(
                switch (search.by()) {
                    case PHONE -> ContactKey.PHONE;
                    case NAME -> ContactKey.NAME;
                    case REGISTRATION -> ContactKey.REGISTRATION;
                },
                search.value(),
                search.purpose());
        Map<String, List<NotificationQueries.Released>> animals = new LinkedHashMap<>();
        queries.released(kits)
                .forEach(row -> animals.computeIfAbsent(row.kit(), kit -> new ArrayList<>())
                        .add(row));
        return animals.values().stream().map(CallerService::match).toList();
    }

    private static CallerMatch match(List<NotificationQueries.Released> rows) {
        NotificationQueries.Released first = rows.get(0);
        return new CallerMatch(
                first.kit(),
                first.registration(),
                first.speciesName(),
                first.diedOn(),
                first.stationName(),
                rows.stream()
                        .map(row -> new CallerMatch.Word(
                                row.disease(), row.outcome(), NotificationRules.say(row.outcome(), row.diseaseName())))
                        .toList());
    }
}
