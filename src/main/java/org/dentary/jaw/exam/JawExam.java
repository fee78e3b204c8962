package org.dentary.jaw.exam;

import jakarta.ws.rs.core.MultivaluedMap;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.jaw.key.JawKey;
import org.dentary.jaw.key.JawObservation;
import org.dentary.jaw.key.JawObservation.Dentine;
import org.dentary.jaw.key.JawObservation.Eruption;
import org.dentary.jaw.key.JawObservation.RowSeen;
import org.dentary.jaw.key.JawObservation.SixthTooth;
import org.dentary.jaw.key.JawObservation.ThirdTooth;
import org.dentary.jaw.key.KeyQuestion;
import org.dentary.platform.CalendarText;
import org.dentary.platform.problem.InvalidInput;

/**
 * An exam in progress: what has been answered, kept in the page's address alone, so that going back, reloading and passing a
 * link on all work and nothing is stored.
 *
 * @param said answers by question, {@code UNSURE} among them; in the order of the key
 * @param diedOn null when not given
 * @param region region of the plan whose dates apply; null for those of everywhere
 */
public record JawExam(Map<KeyQuestion, String> said, LocalDate diedOn, String region) {

    static final String UNSURE = "UNSURE";
    private static final String DIED_ON = "diedOn";
    private static final String REGION = "region";

    /** @throws InvalidInput naming an answer that is none of its question's */
    static JawExam of(MultivaluedMap<String, String> query) {
        Map<KeyQuestion, String> said = new EnumMap<>(KeyQuestion.class);
        for (KeyQuestion question : KeyQuestion.values()) {
            String answer = query.getFirst(question.field());
            if (answer != null) {
                List<String> allowed = allowed(question);
                if (!allowed.contains(answer)) {
                    throw InvalidInput.field(
                            question.field(),
                            "INVALID_VALUE",
                            "'" + answer + "' is no answer; allowed: " + String.join(", ", allowed));
                }
                said.put(question, answer);
            }
        }
        String region = query.getFirst(REGION);
        return new JawExam(
                said, date(query.getFirst(DIED_ON)), region == null || region.isBlank() ? null : region.trim());
    }

    private static List<String> allowed(KeyQuestion question) {
        List<String> allowed = new ArrayList<>(
                question.answers().stream().map(KeyQuestion.Answer::value).toList());
        allowed.add(UNSURE);
        return allowed;
    }

    private static LocalDate date(String text) {
        if (text == null || text.isBlank()) {
            return null;
        }
        try {
            return CalendarText.day(text.trim());
        } catch (DateTimeParseException notADate) {
            throw InvalidInput.field(DIED_ON, "INVALID_VALUE", "'" + text + "' is not a date such as 2026-11-14");
        }
    }

    /** The answers as an observation. */
    public JawObservation observation() {
        String cusps = value(KeyQuestion.THIRD_CUSPS);
        boolean cap = "CAP".equals(cusps);
        String count = value(KeyQuestion.CHEEK_TEETH);
        String row = value(KeyQuestion.ROW_SEEN);
        return new JawObservation(
                null,
                diedOn,
                row == null ? null : RowSeen.valueOf(row),
                count == null ? null : Integer.valueOf(count),
                new ThirdTooth(
                        cap ? Integer.valueOf(3) : cusps == null ? null : Integer.valueOf(cusps),
                        eruption(KeyQuestion.THIRD_ERUPTION),
                        dentine(KeyQuestion.THIRD_DENTINE),
                        cap ? true : null,
                        null),
                new SixthTooth(eruption(KeyQuestion.SIXTH_ERUPTION), dentine(KeyQuestion.SIXTH_DENTINE)),
                null,
                said.entrySet().stream()
                        .filter(entry -> entry.getValue().equals(UNSURE))
                        .map(entry -> entry.getKey().field())
                        .toList(),
                null,
                null,
                null,
                null);
    }

    /** The question to put now: the row first, then as the key asks; null when it asks no more. */
    KeyQuestion next() {
        return said.containsKey(KeyQuestion.ROW_SEEN)
                ? JawKey.next(observation()).orElse(null)
                : KeyQuestion.ROW_SEEN;
    }

    /** The address of this exam with one more answer, those of later questions left behind. */
    String with(KeyQuestion question, String answer) {
        Map<KeyQuestion, String> more = before(question);
        more.put(question, answer);
        return new JawExam(more, diedOn, region).address();
    }

    /** The address at which a question is put again. */
    String back(KeyQuestion question) {
        return new JawExam(before(question), diedOn, region).address();
    }

    private Map<KeyQuestion, String> before(KeyQuestion question) {
        Map<KeyQuestion, String> before = new EnumMap<>(KeyQuestion.class);
        said.forEach((asked, answer) -> {
            if (asked.compareTo(question) < 0) {
                before.put(asked, answer);
            }
        });
        return before;
    }

    private String address() {
        String query = Stream.of(
                        said.entrySet().stream().map(entry -> entry.getKey().field() + "=" + entry.getValue()),
                        Stream.ofNullable(diedOn).map(day -> DIED_ON + "=" + day),
                        Stream.ofNullable(region)
                                .map(code -> REGION + "=" + URLEncoder.encode(code, StandardCharsets.UTF_8)))
                .flatMap(Function.identity())
                .collect(Collectors.joining("&"));
        return query.isEmpty() ? "/jaw-key" : "/jaw-key?" + query;
    }

    private String value(KeyQuestion question) {
        String answer = said.get(question);
        return UNSURE.equals(answer) ? null : answer;
    }

    private Eruption eruption(KeyQuestion question) {
        String answer = value(question);
        return answer == null ? null : Eruption.valueOf(answer);
    }

    private Dentine dentine(KeyQuestion question) {
        String answer = value(question);
        return answer == null ? null : Dentine.valueOf(answer);
    }
}
