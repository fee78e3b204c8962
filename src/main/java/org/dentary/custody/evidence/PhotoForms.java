package org.dentary.custody.evidence;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.dentary.platform.photo.PhotoReader;
import org.dentary.platform.problem.InvalidInput;
import org.jboss.resteasy.reactive.multipart.FileUpload;

/** Keeps the photograph of a form first, so that a form shown again for a fault does not ask for it twice. */
@ApplicationScoped
public class PhotoForms {
    private final EvidenceService evidence;

    PhotoForms(EvidenceService evidence) {
        this.evidence = evidence;
    }

    /**
     * Keeps the file under an id that follows from the form's and from the file.
     *
     * @param form id of the form
     * @param before ids of photographs kept when it was sent before, as typed; null for none
     * @param photo null or empty for none
     * @return all that are kept for it
     * @throws InvalidInput if it is no photograph
     */
    public List<UUID> keep(UUID form, List<String> before, FileUpload photo) {
        List<UUID> kept = new ArrayList<>(ids(before));
        if (photo != null && photo.size() > 0) {
            PhotoReader.Photo read = read(photo);
            UUID id = UUID.nameUUIDFromBytes((form + " " + read.sent()).getBytes(StandardCharsets.UTF_8));
            evidence.keep(id, read);
            if (!kept.contains(id)) {
                kept.add(id);
            }
        }
        return List.copyOf(kept);
    }

    private static PhotoReader.Photo read(FileUpload photo) {
        try (InputStream in = Files.newInputStream(photo.uploadedFile())) {
            return PhotoReader.read(in.readNBytes(PhotoReader.MOST_BYTES + 1), null);
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    /** @throws InvalidInput if one is no id */
    public static List<UUID> ids(List<String> typed) {
        try {
            return Stream.ofNullable(typed)
                    .flatMap(List::stream)
                    .distinct()
                    .map(UUID::fromString)
                    .toList();
        } catch (IllegalArgumentException fault) {
            throw InvalidInput.field("photos", "NO_KEY", "This form is broken; load the page again");
        }
    }
}
