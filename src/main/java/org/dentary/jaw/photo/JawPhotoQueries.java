package org.dentary.jaw.photo;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Reads photographs of jaws; erased ones are left out unless asked for by id. */
@ApplicationScoped
class JawPhotoQueries {
    /** A photograph's row. */
    record Row(
            String id,
            String kit,
            String reading,
            Integer width,
            Integer height,
            Integer bytes,
            String addedBy,
            Instant addedAt,
            Instant erasedAt) {
        JawPhotoView view() {
            return new JawPhotoView(id, kit, reading, width, height, bytes, addedBy, addedAt);
        }
    }

    private static final String COLUMNS = """
            select cast(id as text), kit, cast(reading as text), width, height, bytes, added_by, added_at, erased_at
              from jaw_photo
            """;
    private static final String OF_KIT = COLUMNS + " where kit = :kit and erased_at is null order by added_at, id";
    private static final String BY_ID = COLUMNS + " where id = :id";
    private static final String BY_DIGEST = COLUMNS + " where digest = :digest and erased_at is null";
    private static final String LARGE = "select large from jaw_photo_content where photo = :id";
    private static final String SMALL = "select small from jaw_photo_content where photo = :id";

    private final EntityManager entities;

    JawPhotoQueries(EntityManager entities) {
        this.entities = entities;
    }

    @SuppressWarnings("unchecked")
    List<Row> ofKit(String kit) {
        return entities.createNativeQuery(OF_KIT, Row.class)
                .setParameter("kit", kit)
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    Optional<Row> byId(UUID id) {
        return entities.createNativeQuery(BY_ID, Row.class).setParameter("id", id).getResultList().stream()
                .findFirst();
    }

    @SuppressWarnings("unchecked")
    Optional<Row> byDigest(String digest) {
        return entities.createNativeQuery(BY_DIGEST, Row.class).setParameter("digest", digest).getResultList().stream()
                .findFirst();
    }

    byte[] content(UUID id, boolean small) {
        return (byte[]) entities.createNativeQuery(small ? SMALL : LARGE)
                .setParameter("id", id)
                .getSingleResult();
    }
}
