package org.dentary.platform.request;

import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.util.List;
import org.dentary.platform.table.CsvTable;

/** The common forms of an answer. That no cache keeps one is {@link UncachedFilter}'s. */
public final class Reply {
    private Reply() {}

    /** What was asked for. */
    public static Response ok(Object entity) {
        return answer(200, entity);
    }

    /** What was asked for, as a media type. */
    public static Response ok(Object entity, String type) {
        return Response.ok(entity, type).build();
    }

    /** An answer with its status. */
    public static Response answer(int status, Object entity) {
        return Response.status(status).entity(entity).build();
    }

    /** What was written or read, with its version as the ETag that the next write of it names. */
    public static Response versioned(int status, Object entity, int version) {
        return Response.status(status)
                .entity(entity)
                .header(HttpHeaders.ETAG, ETags.of(version))
                .build();
    }

    /** A page: as it was asked for, or shown again with what was refused. */
    public static Response page(int status, TemplateInstance page) {
        return answer(status, page);
    }

    /** A file to be kept by whoever asked for it. */
    public static Response file(Object body, String type, String name) {
        return Response.ok(body, type)
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + name + "\"")
                .build();
    }

    /** A table as such a file. */
    public static Response csv(String name, List<String> header, List<Object[]> rows) {
        StreamingOutput body = out -> {
            try (CsvTable table = CsvTable.on(out, header)) {
                rows.forEach(table::row);
            }
        };
        return file(body, CsvTable.MEDIA_TYPE, name);
    }
}
