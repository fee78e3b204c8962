package org.dentary.platform.table;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * A CSV table being written (RFC 4180: CRLF, quotes doubled; UTF-8). Text that a spreadsheet would run as a formula gets
 * a leading apostrophe; numbers are written as they are; null is an empty cell.
 */
public final class CsvTable implements AutoCloseable {
    public static final String MEDIA_TYPE = "text/csv;charset=UTF-8";

    private final CsvWriter csv;

    private CsvTable(Writer out) {
        csv = CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(out);
    }

    /** Whether the request asks for CSV before anything else; without a wish JSON is sent. */
    public static boolean isAsked(HttpHeaders headers) {
        MediaType first = headers.getAcceptableMediaTypes().get(0);
        return first.getType().equals("text") && first.getSubtype().equals("csv");
    }

    /** Begins a table with its header line. */
    public static CsvTable on(OutputStream out, List<String> columns) {
        CsvTable table = new CsvTable(new OutputStreamWriter(out, StandardCharsets.UTF_8));
        table.csv.writeRecord(columns);
        return table;
    }

    /** Adds one line; cells in the order of the header. */
    public CsvTable row(Object... cells) {
        String[] texts = new String[cells.length];
        for (int i = 0; i < cells.length; i++) {
            texts[i] = cell(cells[i]);
        }
        csv.writeRecord(texts);
        return this;
    }

    static String cell(Object value) {
        if (value == null) {
            return "";
        }
        String text = value.toString();
        if (value instanceof Number || text.isEmpty()) {
            return text;
        }
        return switch (text.charAt(0)) {
            case '=', '+', '-', '@', '\t', '\r' -> "'" + text;
            default -> text;
        };
    }

    @Override
    public void close() {
        try {
            csv.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
