package org.dentary.jaw.photo;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.UUID;
import org.dentary.platform.photo.PhotoReader;

/** Keeps photographs and erases them; what was erased leaves its row and no pixel. */
@ApplicationScoped
class JawPhotoWrites {
    private static final String ADD = """
            insert into jaw_photo (id, kit, reading, digest, width, height, bytes, added_by, added_at)
            values (:id, :kit, cast(:reading as uuid), :digest, :width, :height, :bytes, :actor, :now)
            """;
    private static final String CONTENT =
            "insert into jaw_photo_content (photo, large, small) values (:id, :large, :small)";
    private static final String ERASE_CONTENT = "delete from jaw_photo_content where photo = :id";
    private static final String ERASED = """
            update jaw_photo set erased_by = :actor, erased_at = :now, erased_reason = :reason where id = :id
            """;

    private final EntityManager entities;

    JawPhotoWrites(EntityManager entities) {
        this.entities = entities;
    }

    void add(UUID id, String kit, UUID reading, PhotoReader.Photo photo, String actor, Instant now) {
        entities.createNativeQuery(ADD)
                .setParameter("id", id)
                .setParameter("kit", kit)
                .setParameter("reading", reading == null ? null : reading.toString())
                .setParameter("digest", photo.digest())
                .setParameter("width", photo.width())
                .setParameter("height", photo.height())
                .setParameter("bytes", photo.large().length)
                .setParameter("actor", actor)
                .setParameter("now", now)
                .executeUpdate();
        entities.createNativeQuery(CONTENT)
                .setParameter("id", id)
                .setParameter("large", photo.large())
                .setParameter("small", photo.small())
                .executeUpdate();
    }

    void erase(UUID id, String reason, String actor, Instant now) {
        entities.createNativeQuery(ERASE_CONTENT).setParameter("id", id).executeUpdate();
        entities.createNativeQuery(ERASED)
                .setParameter("id", id)
                .setParameter("reason", reason)
                .setParameter("actor", actor)
                .setParameter("now", now)
                .executeUpdate();
    }
}
