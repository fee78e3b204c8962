package org.dentary.platform.table;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.Query;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.dentary.platform.database.Snapshot;
import org.dentary.platform.request.Reply;

/** Tables as CSV files whose rows are read while they are sent, so that memory does not grow with them. */
@ApplicationScoped
public class StreamedCsv {
    private final Snapshot snapshot;

    StreamedCsv(Snapshot snapshot) {
        this.snapshot = snapshot;
    }

    /**
     * The file.
     *
     * @param rows made when it is sent; it may not ask who is signed in
     * @param cells of one row, in the order of the header
     */
    public <T> Response file(String name, List<String> header, Callable<Query> rows, Function<T, Object[]> cells) {
        StreamingOutput body = out -> {
            try (CsvTable table = CsvTable.on(out, header)) {
                snapshot.<T>stream(rows, row -> table.row(cells.apply(row)));
            }
        };
        return Reply.file(body, CsvTable.MEDIA_TYPE, name);
    }
}
