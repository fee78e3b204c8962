package org.dentary.custody.evidence;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.dentary.platform.photo.PhotoReader;

/** Reads and keeps photographs that are evidence of custody events. */
@ApplicationScoped
class EvidenceQueries {
    /** A photograph's row. */
    record Row(
            String id,
            String digest,
            String salt,
            Integer width,
            Integer height,
            Integer bytes,
            String addedBy,
            String addedByName,
            Instant addedAt,
            String erasedBy,
            String erasedByName,
            Instant erasedAt,
            String erasedReason) {
        EvidenceView view() {
            return new EvidenceView(
                    UUID.fromString(id),
                    digest,
                    salt,
                    width,
                    height,
                    bytes,
                    addedBy,
                    addedByName,
                    addedAt,
                    null,
                    erasedAt == null ? null : new EvidenceView.Erasure(erasedBy, erasedByName, erasedAt, erasedReason));
        }
    }

    /** That an event shows a photograph. */
    record Shown(
            String event,
            String chain,
            String id,
            String digest,
            String salt,
            Integer width,
            Integer height,
            Integer bytes,
            String addedBy,
            String addedByName,
            Instant addedAt,
            String erasedBy,
            String erasedByName,
            Instant erasedAt,
            String erasedReason) {
        EvidenceView view() {
            return new Row(
                            id,
                            digest,
                            salt,
                            width,
                            height,
                            bytes,
                            addedBy,
                            addedByName,
                            addedAt,
                            erasedBy,
                            erasedByName,
                            erasedAt,
                            erasedReason)
                    .view()
                    .of(chain);
        }
    }

    /** A picture with the salt of its digest. */
    record Picture(String id, String digest, byte[] salt, byte[] large, byte[] small) {}

    private static final String COLUMNS = """
            cast(evidence.id as text), evidence.digest, encode(content.salt, 'hex'), evidence.width, evidence.height,
                   evidence.bytes, evidence.added_by, coalesce(adder.name, evidence.added_by), evidence.added_at,
                   erasure.erased_by, coalesce(eraser.name, erasure.erased_by), erasure.erased_at, erasure.reason
            """;
    private static final String JOINS = """
              left join custody_evidence_content content on content.evidence = evidence.id
              left join custody_evidence_erasure erasure on erasure.evidence = evidence.id
              left join person adder on adder.code = evidence.added_by
              left join person eraser on eraser.code = erasure.erased_by
            """;
    private static final String BY_IDS = "select " + COLUMNS + " from custody_evidence evidence " + JOINS + """
             where evidence.id = any(cast(:ids as uuid[])) order by evidence.added_at, evidence.id
            """;
    private static final String OF_EVENTS =
            "select cast(shown.event as text), event.chain, " + COLUMNS + """
              from custody_event_evidence shown
              join ledger_event event on event.id = shown.event
              join custody_evidence evidence on evidence.id = shown.evidence
            """ + JOINS + """
             where shown.event = any(cast(:events as uuid[]))
             order by shown.event, evidence.added_at, evidence.id
            """;
    private static final String OF_DISCREPANCIES =
            "select cast(shown.discrepancy as text), wrong.code, " + COLUMNS + """
              from discrepancy_evidence shown
              join discrepancy wrong on wrong.id = shown.discrepancy
              join custody_evidence evidence on evidence.id = shown.evidence
            """ + JOINS + """
             where shown.discrepancy = any(cast(:discrepancies as uuid[]))
             order by shown.discrepancy, evidence.added_at, evidence.id
            """;
    private static final String SHOWN = """
            select count(distinct evidence) from custody_event_evidence where evidence = any(cast(:ids as uuid[]))
            """;
    private static final String PICTURES = """
            select cast(evidence.id as text), evidence.digest, content.salt, content.large, content.small
              from custody_evidence evidence join custody_evidence_content content on content.evidence = evidence.id
             where evidence.id = any(cast(:ids as uuid[]))
            """;
    private static final String ADD = """
            insert into custody_evidence (id, digest, width, height, bytes, added_by, added_at)
            values (:id, :digest, :width, :height, :bytes, :actor, :now)
            """;
    private static final String ADD_CONTENT = """
            insert into custody_evidence_content (evidence, salt, large, small) values (:id, :salt, :large, :small)
            """;
    private static final String ERASED = """
            insert into custody_evidence_erasure (evidence, erased_by, erased_at, reason)
            select id, :actor, :now, :reason from custody_evidence where id = :id on conflict (evidence) do nothing
            """;
    private static final String ERASE_CONTENT = "delete from custody_evidence_content where evidence = :id";
    private static final String SHOW = """
            insert into custody_event_evidence (event, evidence)
            select event, evidence from unnest(cast(:events as uuid[])) event
             cross join unnest(cast(:evidence as uuid[])) evidence
            """;

    private final EntityManager entities;

    EvidenceQueries(EntityManager entities) {
        this.entities = entities;
    }

    @SuppressWarnings("unchecked")
    List<Row> byIds(Collection<UUID> ids) {
        return entities.createNativeQuery(BY_IDS, Row.class)
                .setParameter("ids", array(ids))
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    List<Shown> ofEvents(Collection<UUID> events) {
        return entities.createNativeQuery(OF_EVENTS, Shown.class)
                .setParameter("events", array(events))
                .getResultList();
    }

    /** The same of discrepancies: {@code event} is the discrepancy, {@code chain} the code it is about. */
    @SuppressWarnings("unchecked")
    List<Shown> ofDiscrepancies(Collection<String> discrepancies) {
        return entities.createNativeQuery(OF_DISCREPANCIES, Shown.class)
                .setParameter("discrepancies", "{" + String.join(",", discrepancies) + "}")
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    List<Picture> pictures(Collection<UUID> ids) {
        return ((List<Object[]>) entities.createNativeQuery(PICTURES)
                        .setParameter("ids", array(ids))
                        .getResultList())
                .stream()
                        .map(row -> new Picture(
                                (String) row[0], (String) row[1], (byte[]) row[2], (byte[]) row[3], (byte[]) row[4]))
                        .toList();
    }

    /** How many of them some event shows. */
    long countShown(Collection<UUID> ids) {
        return ((Number) entities.createNativeQuery(SHOWN)
                        .setParameter("ids", array(ids))
                        .getSingleResult())
                .longValue();
    }

    Optional<Row> byId(UUID id) {
        return byIds(List.of(id)).stream().findFirst();
    }

    void add(UUID id, String digest, byte[] salt, PhotoReader.Photo photo, String actor, Instant now) {
        entities.createNativeQuery(ADD)
                .setParameter("id", id)
                .setParameter("digest", digest)
                .setParameter("width", photo.width())
                .setParameter("height", photo.height())
                .setParameter("bytes", photo.large().length)
                .setParameter("actor", actor)
                .setParameter("now", now)
                .executeUpdate();
        entities.createNativeQuery(ADD_CONTENT)
                .setParameter("id", id)
                .setParameter("salt", salt)
                .setParameter("large", photo.large())
                .setParameter("small", photo.small())
                .executeUpdate();
    }

    /** Destroys picture and salt; that it was erased is told once. */
    boolean erase(UUID id, String actor, Instant now, String reason) {
        entities.createNativeQuery(ERASED)
                .setParameter("id", id)
                .setParameter("actor", actor)
                .setParameter("now", now)
                .setParameter("reason", reason)
                .executeUpdate();
        return entities.createNativeQuery(ERASE_CONTENT).setParameter("id", id).executeUpdate() == 1;
    }

    void show(Collection<UUID> events, Collection<UUID> evidence) {
        entities.createNativeQuery(SHOW)
                .setParameter("events", array(events))
                .setParameter("evidence", array(evidence))
                .executeUpdate();
    }

    private static String array(Collection<UUID> ids) {
        return "{" + String.join(",", ids.stream().map(UUID::toString).toList()) + "}";
    }
}
