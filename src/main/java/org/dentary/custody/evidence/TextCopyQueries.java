package org.dentary.custody.evidence;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import org.dentary.custody.evidence.TextErasureQueries.Said;
import org.dentary.platform.database.HistoryQueries;

/** Takes a text of an entry away wherever custody repeats it for its pages: today's rows, then their history. */
@ApplicationScoped
class TextCopyQueries {
    private static final String REASON = """
            update hand_over set reason = null, version = version + 1
             where id = cast(:act as uuid) and strpos(reason, :words) > 0
            """;
    private static final String OFFERED_AT =
            "update hand_over set place = null, version = version + 1 where place = :words";
    // Locked in the order in which everybody locks them.
    private static final String LIES_AT = """
            update custody_head h set place = null
              from (select code from custody_head where place = :words order by code collate "C" for update) l
             where h.code = l.code
            """;
    private static final String BOX_AT = "update box set place = null, version = version + 1 where place = :words";
    private static final String SEEN = """
            update discrepancy set evidence = null, version = version + 1
             where id = cast(:discrepancy as uuid) and evidence is not null
            """;

    private final EntityManager entities;
    private final HistoryQueries history;

    TextCopyQueries(EntityManager entities, HistoryQueries history) {
        this.entities = entities;
        this.history = history;
    }

    /** @return from how many rows of today it went */
    int erase(String field, Said said) {
        return switch (field) {
            case "reason" -> said.act() == null || said.content() == null ? 0 : reason(said);
            case "placeText" -> said.content() == null ? 0 : place(said.words());
            case "evidence" -> said.discrepancy() == null ? 0 : seen(said.discrepancy());
            default -> 0;
        };
    }

    private int reason(Said said) {
        int gone = entities.createNativeQuery(REASON)
                .setParameter("act", said.act())
                .setParameter("words", said.words())
                .executeUpdate();
        history.erase("hand_over", "reason", said.act(), said.words());
        return gone;
    }

    private int place(String words) {
        int gone = 0;
        for (String copy : new String[] {OFFERED_AT, LIES_AT, BOX_AT}) {
            gone += entities.createNativeQuery(copy)
                    .setParameter("words", words)
                    .executeUpdate();
        }
        history.erase("hand_over", "place", null, words);
        history.erase("box", "place", null, words);
        return gone;
    }

    private int seen(String discrepancy) {
        int gone = entities.createNativeQuery(SEEN)
                .setParameter("discrepancy", discrepancy)
                .executeUpdate();
        history.erase("discrepancy", "evidence", discrepancy, null);
        return gone;
    }
}
