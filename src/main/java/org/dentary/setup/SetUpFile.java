package org.dentary.setup;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.setup.list.Boundary;
import org.dentary.setup.list.SetUpList;

/**
 * Reads a coordinator's file: CSV (RFC 4180, comma, UTF-8 with or without a byte order mark) or, for boundaries, a GeoJSON
 * FeatureCollection. A whole file that cannot be read is refused with the reason; what is wrong in a line is left to
 * {@link SetUpRules}.
 */
final class SetUpFile {
    private static final int MOST_LINES = 50_000;
    /** What our own files put before text that a spreadsheet would run as a formula. */
    private static final Pattern GUARDED = Pattern.compile("(?s)'[=+\\-@\\t\\r].*");

    private SetUpFile() {}

    /**
     * The file's header and lines.
     *
     * @throws InvalidInput if the file is empty, in another character set or separator, or its quotes do not close
     */
    static RawTable read(SetUpList list, byte[] bytes) {
        String text = decode(bytes == null ? new byte[0] : bytes);
        if (text.isBlank()) {
            throw refused(
                    "FILE_EMPTY", "The file is empty; the first line names the columns, one row follows on each line");
        }
        if (text.stripLeading().startsWith("{")) {
            return geoJson(list, text);
        }
        if (text.chars().filter(c -> c == '"').count() % 2 != 0) {
            throw refused("FILE_NOT_CSV", "The file is not CSV: a quote is opened and never closed; check its quotes");
        }
        RawTable table = csv(text);
        if (table.header().size() == 1 && table.header().get(0).matches(".*[;\\t].*")) {
            throw refused(
                    "SEPARATOR",
                    "The columns of the first line are not separated by commas; save the file as CSV with commas");
        }
        return table;
    }

    private static RawTable csv(String text) {
        List<String> header = null;
        List<RawTable.Line> lines = new ArrayList<>();
        try (CsvReader<CsvRecord> csv = CsvReader.builder()
                .ignoreDifferentFieldCount(true)
                .acceptCharsAfterQuotes(false)
                .ofCsvRecord(text)) {
            for (CsvRecord row : csv) {
                List<String> cells =
                        row.getFields().stream().map(SetUpFile::plain).toList();
                if (header == null) {
                    header = cells.stream().map(c -> c.toLowerCase(Locale.ROOT)).toList();
                } else if (!cells.stream().allMatch(String::isEmpty)) {
                    lines.add(new RawTable.Line((int) row.getStartingLineNumber(), cells));
                }
                if (lines.size() > MOST_LINES) {
                    throw refused("FILE_TOO_LONG", "A file holds at most " + MOST_LINES + " lines; split it");
                }
            }
        } catch (CsvParseException e) {
            throw refused("FILE_NOT_CSV", "The file is not CSV: " + e.getMessage() + "; check its quotes");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new RawTable(header, lines);
    }

    private static String plain(String cell) {
        String trimmed = cell.strip();
        return GUARDED.matcher(trimmed).matches() ? trimmed.substring(1) : trimmed;
    }

    private static RawTable geoJson(SetUpList list, String text) {
        Optional<List<List<String>>> features = Boundary.features(text);
        if (list != SetUpList.BOUNDARIES || features.isEmpty()) {
            throw refused(
                    "FILE_NOT_CSV",
                    "The file is neither CSV nor, for " + SetUpList.BOUNDARIES.path()
                            + ", a GeoJSON FeatureCollection whose features have the property code");
        }
        if (Boundary.isInAnotherSystem(text)) {
            throw refused(
                    "NOT_WGS_84",
                    "The file names a coordinate reference system other than WGS 84 (RFC 7946, section 4); convert it to"
                            + " longitude and latitude in degrees first");
        }
        List<RawTable.Line> lines = new ArrayList<>();
        for (List<String> feature : features.get()) {
            // a feature has no line of its own; its place in the collection, after a header, stands for it
            lines.add(new RawTable.Line(lines.size() + 2, feature));
        }
        return new RawTable(list.header(), lines);
    }

    private static String decode(byte[] bytes) {
        if (bytes.length >= 2
                && ((bytes[0] == (byte) 0xFF && bytes[1] == (byte) 0xFE)
                        || (bytes[0] == (byte) 0xFE && bytes[1] == (byte) 0xFF))) {
            throw refused("CHARACTER_SET", "The file is in UTF-16; save it as CSV UTF-8");
        }
        try {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            if (text.indexOf('\0') >= 0) {
                throw refused("CHARACTER_SET", "The file holds zero bytes, so it is no text; save it as CSV UTF-8");
            }
            return text.startsWith("\uFEFF") ? text.substring(1) : text;
        } catch (CharacterCodingException e) {
            throw refused(
                    "CHARACTER_SET",
                    "The file is not in UTF-8 (line " + firstFaultyLine(bytes)
                            + " holds a byte that no UTF-8 text has);" + " save it as CSV UTF-8 and send it again");
        }
    }

    private static int firstFaultyLine(byte[] bytes) {
        int line = 1;
        int start = 0;
        for (int i = 0; i <= bytes.length; i++) {
            if (i == bytes.length || bytes[i] == '\n') {
                String text = new String(bytes, start, i - start, StandardCharsets.UTF_8);
                if (text.indexOf('\uFFFD') >= 0) {
                    return line;
                }
                line++;
                start = i + 1;
            }
        }
        return line;
    }

    private static InvalidInput refused(String code, String message) {
        return new InvalidInput(code, message);
    }
}
