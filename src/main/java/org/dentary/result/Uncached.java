package org.dentary.result;

import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.util.List;
import org.dentary.platform.table.CsvTable;

/** Answers about results, which no cache may keep. */
public final class Uncached {
    private Uncached() {}

    /** A table as a file that no cache keeps. */
    public static Response csv(String name, List<String> header, List<Object[]> rows) {
        StreamingOutput body = out -> {
            try (CsvTable table = CsvTable.on(out, header)) {
                rows.forEach(table::row);
            }
        };
        return Response.ok(body)
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + name + "\"")
                .header(HttpHeaders.CACHE_CONTROL, "private, no-store")
                .build();
    }

    /** A page that no cache keeps. */
    public static Response page(int status, TemplateInstance page) {
        return Response.status(status)
                .entity(page)
                .header(HttpHeaders.CACHE_CONTROL, "private, no-store")
                .build();
    }
}
