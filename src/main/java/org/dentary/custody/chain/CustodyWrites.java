package org.dentary.custody.chain;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Set-based writes of chain ends: however many codes, one statement each. */
@ApplicationScoped
class CustodyWrites {
    private static final String COLUMNS =
            "code, sequence, hash, custodian_kind, custodian, box, place, cast(offered as text) as offered, last_kind,"
                    + " last_occurred_at, collected_at";

    /** Rows are locked in code order, the same for every writer, so that two writers never wait for each other. */
    private static final String LOCK =
            "select " + COLUMNS + " from custody_head where code = any(:codes) order by code collate \"C\" for update";

    private static final String ROWS = """
             from json_to_recordset(cast(:rows as json)) as r(code text, sequence int, hash text, custodian_kind text,
                 custodian text, box text, place text, offered uuid, last_kind text, last_occurred_at timestamptz,
                 collected_at timestamptz)
            """;
    private static final String BEGIN =
            """
            insert into custody_head (code, sequence, hash, custodian_kind, custodian, box, place, offered, last_kind,
                last_occurred_at, collected_at)
            select r.code, r.sequence, r.hash, r.custodian_kind, r.custodian, r.box, r.place, r.offered, r.last_kind,
                r.last_occurred_at, r.collected_at
            """ + ROWS + " order by r.code collate \"C\" on conflict (code) do nothing returning code";
    private static final String ADVANCE = """
            update custody_head h set sequence = r.sequence, hash = r.hash, custodian_kind = r.custodian_kind,
                custodian = r.custodian, box = r.box, place = r.place, offered = r.offered, last_kind = r.last_kind,
                last_occurred_at = r.last_occurred_at
            """ + ROWS + " where h.code = r.code";

    private final EntityManager entities;
    private final ObjectMapper json;

    CustodyWrites(EntityManager entities, ObjectMapper json) {
        this.entities = entities;
        this.json = json;
    }

    /** Locks the chain ends of codes until the transaction ends; a code without a chain is left out. */
    @SuppressWarnings("unchecked")
    Map<String, Head> lock(Collection<String> codes) {
        Map<String, Head> heads = new LinkedHashMap<>();
        if (!codes.isEmpty()) {
            List<HeadRow> rows = entities.createNativeQuery(LOCK, HeadRow.class)
                    .setParameter("codes", codes.toArray(String[]::new))
                    .getResultList();
            rows.forEach(row -> heads.put(row.code(), row.head()));
        }
        return heads;
    }

    /**
     * Begins chains.
     *
     * @return the codes whose chains did begin; another's chain may be there already
     */
    @SuppressWarnings("unchecked")
    List<String> begin(Collection<Head> heads) {
        return entities.createNativeQuery(BEGIN)
                .setParameter("rows", rows(heads))
                .getResultList();
    }

    /** Writes where chains now stand. */
    void advance(Collection<Head> heads) {
        entities.createNativeQuery(ADVANCE).setParameter("rows", rows(heads)).executeUpdate();
    }

    private String rows(Collection<Head> heads) {
        return json(heads.stream()
                .sorted(Comparator.comparing(Head::code))
                .map(CustodyWrites::row)
                .toList());
    }

    private static Map<String, Object> row(Head head) {
        Map<String, Object> row = new LinkedHashMap<>();
        row.put("code", head.code());
        row.put("sequence", head.sequence());
        row.put("hash", head.hash());
        row.put("custodian_kind", head.holder().kind());
        row.put("custodian", head.holder().code());
        row.put("box", head.box());
        row.put("place", head.place());
        row.put("offered", head.offered());
        row.put("last_kind", head.lastKind());
        row.put("last_occurred_at", text(head.lastOccurredAt()));
        row.put("collected_at", text(head.collectedAt()));
        return row;
    }

    private static String text(Instant instant) {
        return instant.toString();
    }

    private String json(Object rows) {
        try {
            return json.writeValueAsString(rows);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("strings and numbers can always be written", e);
        }
    }
}
