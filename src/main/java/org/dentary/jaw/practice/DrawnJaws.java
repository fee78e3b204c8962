package org.dentary.jaw.practice;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.dentary.jaw.drawing.JawDrawing;
import org.dentary.jaw.drawing.JawDrawings;
import org.dentary.jaw.exam.JawExam;
import org.dentary.jaw.key.JawObservation;
import org.dentary.jaw.key.KeyQuestion;

/**
 * Jaws of nobody's, drawn: every cue of the key as a picture, from a file of observations. Their age class is not written
 * anywhere; it is what the key answers. Some have none, for saying "unknown" is to be practiced too.
 */
final class DrawnJaws {
    private static final List<KeyQuestion> SHOWN = Stream.of(KeyQuestion.values())
            .sorted(Comparator.comparing(DrawnJaws::place))
            .toList();
    private static final Map<String, JawObservation> SEEN = new LinkedHashMap<>();
    private static final Map<String, List<Cue>> DRAWN = new LinkedHashMap<>();

    static {
        try (InputStream in = DrawnJaws.class.getResourceAsStream("drawn-jaws.csv");
                CsvReader<NamedCsvRecord> rows =
                        CsvReader.builder().ofNamedCsvRecord(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            rows.forEach(DrawnJaws::read);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private DrawnJaws() {}

    /** One thing to be seen, with the words for where it is. */
    record Cue(String place, JawDrawing drawing) {}

    /** Their names, in the order of the file. */
    static List<String> names() {
        return List.copyOf(SEEN.keySet());
    }

    /** What is to be seen in one; empty where there is none of that name. */
    static Optional<JawObservation> seen(String name) {
        return Optional.ofNullable(SEEN.get(name));
    }

    /** Its drawings: the row first, then the third tooth, then the sixth. */
    static List<Cue> cues(String name) {
        return DRAWN.get(name);
    }

    private static void read(NamedCsvRecord row) {
        Map<KeyQuestion, String> said = new EnumMap<>(KeyQuestion.class);
        for (KeyQuestion question : KeyQuestion.values()) {
            String value = row.getField(question.field());
            if (!value.isEmpty()) {
                said.put(question, value);
            }
        }
        SEEN.put(row.getField("name"), new JawExam(said, null, null).observation());
        DRAWN.put(row.getField("name"), pictures(said));
    }

    private static List<Cue> pictures(Map<KeyQuestion, String> said) {
        List<Cue> pictures = new ArrayList<>();
        for (KeyQuestion question : SHOWN) {
            boolean hidden = "FRONT_ONLY".equals(said.get(KeyQuestion.ROW_SEEN)) && question == KeyQuestion.CHEEK_TEETH;
            boolean whole = question == KeyQuestion.ROW_SEEN && "WHOLE".equals(said.get(question));
            if (said.containsKey(question) && !hidden && !whole) {
                pictures.add(new Cue(words(question), picture(question, said.get(question))));
            }
        }
        return List.copyOf(pictures);
    }

    private static JawDrawing picture(KeyQuestion question, String value) {
        return question.answers().stream()
                .filter(answer -> answer.value().equals(value))
                .map(answer -> JawDrawings.find(answer.drawing()).orElseThrow())
                .findFirst()
                .orElseThrow(
                        () -> new IllegalStateException("'" + value + "' is no answer to " + question.field() + ": "
                                + Arrays.toString(question.answers().stream()
                                        .map(KeyQuestion.Answer::value)
                                        .toArray())));
    }

    private static String words(KeyQuestion question) {
        return switch (question) {
            case ROW_SEEN, CHEEK_TEETH -> "The row";
            case THIRD_CUSPS -> "Third tooth, its cusps";
            case THIRD_ERUPTION -> "Third tooth, its height";
            case THIRD_DENTINE -> "Third tooth, its crest";
            case SIXTH_ERUPTION -> "Sixth tooth, its height";
            case SIXTH_DENTINE -> "Sixth tooth, its crest";
        };
    }

    private static int place(KeyQuestion question) {
        return switch (question) {
            case ROW_SEEN -> 0;
            case CHEEK_TEETH -> 1;
            case THIRD_CUSPS -> 2;
            case THIRD_ERUPTION -> 3;
            case THIRD_DENTINE -> 4;
            case SIXTH_ERUPTION -> 5;
            case SIXTH_DENTINE -> 6;
        };
    }
}
