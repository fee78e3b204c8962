package org.dentary.custody.chain;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.ledger.LedgerEvent;

/** Reads chain ends, events, labels and places; each a set, however many codes. */
@ApplicationScoped
public class CustodyQueries {
    private static final String HEADS = """
            select code, sequence, hash, custodian_kind, custodian, box, place, cast(offered as text) as offered,
                   last_kind, last_occurred_at, collected_at
              from custody_head where code = any(:codes) order by code
            """;
    private static final String LABELS = """
            select l.code, l.part, l.kit_bound as kit, l.voided_at is not null as voided, s.time_zone
              from label l
              join kit k on k.code = l.kit_printed
              join kit_block b on b.id = k.block
              join station s on s.code = b.station
             where l.code = any(:codes) order by l.code
            """;
    private static final String PLACES = """
            select code, kind, time_zone from (
                select s.code, 'STATION' as kind, s.time_zone, 1 as rank from station s where s.code = any(:codes)
                union all
                select o.code, 'STORE', s.time_zone, 2 from store o left join station s on s.code = o.station
                 where o.code = any(:codes)
                union all
                select p.code, 'PARTY', null, 3 from party p where p.code = any(:codes)
                union all
                select p.code, 'PARTY', null, 4 from laboratory p where p.code = any(:codes)
                union all
                select b.code, 'BOX', null, 5 from box b where b.code = any(:codes)
            ) p order by rank desc, code
            """;
    private static final String NAMES = """
            select code, name from (
                select code, name, 5 as rank from person where code = any(:codes)
                union all select code, name, 4 from station where code = any(:codes)
                union all select code, name, 3 from store where code = any(:codes)
                union all select code, name, 2 from laboratory where code = any(:codes)
                union all select code, name, 1 from party where code = any(:codes)
            ) n order by rank, code
            """;
    private static final String INSIDE = """
            with recursive inside (code, box, depth) as (
                select h.code, h.box, 1 from custody_head h where h.box = any(:boxes)
                union
                select h.code, h.box, i.depth + 1 from custody_head h join inside i on h.box = i.code
            ) select code, box, min(depth) as depth from inside group by code, box order by depth, code
            """;
    private static final String AROUND = """
            with recursive around (code) as (
                select h.box from custody_head h where h.code = any(:codes) and h.box is not null
                union
                select h.box from custody_head h join around a on h.code = a.code where h.box is not null
            ) select code from around order by code
            """;
    private static final String PRESERVATIONS =
            "select code, preservation, since from specimen_preservation where code = any(:codes) order by code, since, id";
    private static final String EVENTS_OF_ACT = """
            select bytes from ledger_event where hand_over = cast(:act as uuid) order by chain, sequence
            """;
    private static final String RECEIVED = "select distinct chain from laboratory_arrival where chain = any(:codes)";
    private static final String IS_ACT_RECORDED =
            "select exists (select 1 from ledger_event where hand_over = cast(:act as uuid))";

    private final EntityManager entities;

    CustodyQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** A label: its part, the kit it is bound to, and the zone of the station it was issued to. */
    public record LabelRow(String code, String part, String kit, Boolean voided, String timeZone) {
        public boolean isBox() {
            return part.equals("BOX");
        }
    }

    /** A place that has a code. */
    record PlaceRow(String code, String kind, String timeZone) {}

    /** A code and what people call it. */
    record NameRow(String code, String name) {}

    /** What lies in a box, directly (depth 1) or in a box inside it. */
    public record InsideRow(String code, String box, Integer depth) {}

    /** How a specimen was kept from a moment on. */
    public record PreservationRow(String code, String preservation, Instant since) {}

    /** By code, where each stands now; a code without a chain is left out. */
    public Map<String, Head> heads(Collection<String> codes) {
        return rows(entities.createNativeQuery(HEADS, HeadRow.class).setParameter("codes", array(codes)), HeadRow.class)
                .stream()
                .collect(Collectors.toMap(HeadRow::code, HeadRow::head));
    }

    /** Where one stands now; empty without a chain. */
    public Optional<Head> head(String code) {
        return Optional.ofNullable(heads(List.of(code)).get(code));
    }

    /** By code, the labels that were issued; any other code is left out. */
    public Map<String, LabelRow> labels(Collection<String> codes) {
        return rows(
                        entities.createNativeQuery(LABELS, LabelRow.class).setParameter("codes", array(codes)),
                        LabelRow.class)
                .stream()
                .collect(Collectors.toMap(LabelRow::code, label -> label));
    }

    /** The places among codes; what is none is left out. */
    Map<String, PlaceRow> places(Collection<String> codes) {
        Map<String, PlaceRow> places = new HashMap<>();
        rows(entities.createNativeQuery(PLACES, PlaceRow.class).setParameter("codes", array(codes)), PlaceRow.class)
                .forEach(place -> places.put(place.code(), place));
        return places;
    }

    /** What people call persons, stations, stores, organisations and laboratories; unknown codes are left out. */
    public Map<String, String> names(Collection<String> codes) {
        Map<String, String> names = new HashMap<>();
        rows(entities.createNativeQuery(NAMES, NameRow.class).setParameter("codes", array(codes)), NameRow.class)
                .forEach(name -> names.put(name.code(), name.name()));
        return names;
    }

    /** Everything in some boxes, boxes in boxes included, nearest first. */
    public List<InsideRow> inside(Collection<String> boxes) {
        return boxes.isEmpty()
                ? List.of()
                : rows(
                        entities.createNativeQuery(INSIDE, InsideRow.class).setParameter("boxes", array(boxes)),
                        InsideRow.class);
    }

    /** The boxes around codes, however deep, sorted. */
    @SuppressWarnings("unchecked")
    public List<String> around(Collection<String> codes) {
        return entities.createNativeQuery(AROUND)
                .setParameter("codes", array(codes))
                .getResultList();
    }

    /** The events of one act over several chains. */
    @SuppressWarnings("unchecked")
    public List<LedgerEvent> eventsOf(UUID act) {
        List<String> bytes = entities.createNativeQuery(EVENTS_OF_ACT)
                .setParameter("act", act.toString())
                .getResultList();
        return bytes.stream().map(LedgerEvent::parse).toList();
    }

    /** Those of the codes that a laboratory has had, or an organisation has counted in, at some time. */
    @SuppressWarnings("unchecked")
    public Set<String> received(Collection<String> codes) {
        return Set.copyOf(entities.createNativeQuery(RECEIVED)
                .setParameter("codes", array(codes))
                .getResultList());
    }

    /** Whether an event of that act is on the ledger. */
    public boolean isActRecorded(UUID act) {
        return (Boolean) entities.createNativeQuery(IS_ACT_RECORDED)
                .setParameter("act", act.toString())
                .getSingleResult();
    }

    /** How specimens were kept, each one's oldest first. */
    public List<PreservationRow> preservations(Collection<String> codes) {
        return rows(
                entities.createNativeQuery(PRESERVATIONS, PreservationRow.class).setParameter("codes", array(codes)),
                PreservationRow.class);
    }

    private static String[] array(Collection<String> codes) {
        return codes.toArray(String[]::new);
    }

    @SuppressWarnings("unchecked")
    private static <T> List<T> rows(Query query, Class<T> row) {
        return (List<T>) query.getResultList();
    }
}
