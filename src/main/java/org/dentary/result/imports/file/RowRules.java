package org.dentary.result.imports.file;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.dentary.codes.LabelCode;
import org.dentary.codes.NotACode;
import org.dentary.platform.CalendarText;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.result.FindingReason;
import org.dentary.result.FindingRules;
import org.dentary.result.FindingStatus;
import org.dentary.result.FindingWord;
import org.dentary.result.Stage;

/** Checks of a file's rows that need no database: codes, words, days, repeats. Codes and words come out in one form. */
public final class RowRules {
    private static final Map<String, String> COLUMNS = Map.of(
            "reason", "unsuitable_reason",
            "testedOn", "tested_on",
            "reportedOn", "reported_on",
            "finding", "finding",
            "corrects", "corrects");

    /** The most characters of each text, as a finding entered by hand takes them. */
    private static final int LONGEST_CODES = 1_500;

    private static final int LONGEST_NUMBER = 80;
    private static final int LONGEST_CODE = 40;
    private static final int LONGEST_VALUE = 200;

    /** What is kept of a text that is none of ours, to find it again in the file. */
    private static final int KEPT = 200;

    private RowRules() {}

    /** Rows with codes and words in one form, and the faults found; a faulty value stays as it was given. */
    public static ImportFile check(ImportFile file, LocalDate today) {
        List<RowProblem> problems = new ArrayList<>(file.problems());
        List<ImportRow> rows = new ArrayList<>(file.rows().size());
        Map<String, Integer> seen = new HashMap<>();
        Map<String, ImportRow> finals = new HashMap<>();
        Set<String> unread =
                file.problems().stream().map(p -> p.line() + " " + p.field()).collect(Collectors.toSet());
        for (ImportRow row : file.rows()) {
            List<RowProblem> ofCode = new ArrayList<>();
            ImportRow plain = plain(row, ofCode);
            if (!unread.contains(row.line() + " specimen_code")) {
                problems.addAll(ofCode);
            }
            Integer first = seen.putIfAbsent(key(plain), plain.line());
            if (first != null) {
                problems.add(new RowProblem(
                        row.line(), "specimen_code", "REPEATED_LINE", "the line says the same as line " + first));
            }
            rows.add(plain);
            List<RowProblem> ofWords = new ArrayList<>();
            words(plain, today, ofWords);
            // What could not be read of it was said already: that it is missing adds nothing.
            ofWords.removeIf(p -> p.rule().equals("REQUIRED") && unread.contains(p.line() + " " + p.field()));
            problems.addAll(ofWords);
            if (first == null && ofCode.isEmpty() && ofWords.isEmpty()) {
                sameTest(plain, finals, problems);
            }
        }
        return new ImportFile(rows, problems);
    }

    /** Two lines of a file are one test as a line and what is posted are: they may not both be its final word. */
    private static void sameTest(ImportRow row, Map<String, ImportRow> finals, List<RowProblem> problems) {
        boolean isFinal = row.status().equals(FindingStatus.FINAL.name())
                && row.corrects() == null
                && row.finding() != null
                && !row.finding().equals(FindingWord.INVALID_RUN.name())
                && !row.finding().equals(FindingWord.NOT_TESTED.name());
        ImportRow other =
                isFinal ? finals.putIfAbsent(String.join("|", row.specimens(), row.method(), row.stage()), row) : null;
        if (other == null) {
            return;
        }
        if (!other.finding().equals(row.finding())) {
            problems.add(new RowProblem(
                    row.line(),
                    "finding",
                    "CONTRADICTS_LINE",
                    "the line says " + row.finding() + ", but line " + other.line() + " says " + other.finding()
                            + " of this tissue, method and stage, both as final; ask the laboratory which one holds"));
        } else if (Objects.equals(other.run(), row.run())) {
            problems.add(new RowProblem(
                    row.line(),
                    "finding",
                    "REPEATED_LINE",
                    "line " + other.line() + " has the final " + row.finding()
                            + " of this tissue, method and stage; leave one of them out, or name the run if the test"
                            + " was made again"));
        }
    }

    private static String key(ImportRow row) {
        return String.join(
                "|",
                Arrays.asList(
                        String.valueOf(row.specimens()),
                        String.valueOf(row.accession()),
                        String.valueOf(row.item()),
                        String.valueOf(row.method()),
                        String.valueOf(row.stage()),
                        String.valueOf(row.finding()),
                        String.valueOf(row.status()),
                        String.valueOf(row.testedOn()),
                        String.valueOf(row.run())));
    }

    private static ImportRow plain(ImportRow row, List<RowProblem> problems) {
        return new ImportRow(
                row.line(),
                codes(row, problems),
                text(row, "accession_number", row.accession(), LONGEST_NUMBER, problems),
                text(row, "laboratory_item", row.item(), LONGEST_NUMBER, problems),
                text(row, "test_method", row.method(), LONGEST_CODE, problems),
                word(row.stage()),
                word(row.finding()),
                row.status() == null ? FindingStatus.FINAL.name() : word(row.status()),
                row.testedOn(),
                row.reportedOn(),
                word(row.reason()),
                text(row, "measured_value", row.measuredValue(), LONGEST_VALUE, problems),
                text(row, "performing_laboratory", row.performingLaboratory(), LONGEST_CODE, problems),
                text(row, "corrects", row.corrects(), LONGEST_NUMBER, problems),
                text(row, "run", row.run(), LONGEST_NUMBER, problems),
                row.tissue());
    }

    /** A text as it was given, or the beginning of one that no finding can have. */
    private static String text(ImportRow row, String column, String given, int longest, List<RowProblem> problems) {
        if (given != null && given.length() > longest) {
            problems.add(new RowProblem(
                    row.line(),
                    column,
                    "TOO_LONG",
                    "the text has " + given.length() + " characters, allowed are " + longest + "; it begins with '"
                            + given.substring(0, LONGEST_CODE) + "'"));
            return given.substring(0, longest);
        }
        // What was measured is kept as the laboratory wrote it.
        if (given != null && longest != LONGEST_VALUE && given.chars().anyMatch(Character::isISOControl)) {
            problems.add(
                    new RowProblem(
                            row.line(),
                            column,
                            "UNPRINTABLE",
                            "the text holds a line break or another character that does not print; enter it anew from the report"));
        }
        return given;
    }

    private static String begun(String given) {
        return given.length() <= KEPT ? given : given.substring(0, KEPT);
    }

    private static String word(String given) {
        return given == null
                ? null
                : given.toUpperCase(Locale.ROOT).replace(' ', '_').replace('-', '_');
    }

    private static String codes(ImportRow row, List<RowProblem> problems) {
        if (row.specimens() == null) {
            problems.add(new RowProblem(
                    row.line(), "specimen_code", "REQUIRED", "the code is missing; enter it from the label"));
            return null;
        }
        if (row.specimens().length() > LONGEST_CODES) {
            problems.add(new RowProblem(
                    row.line(),
                    "specimen_code",
                    "TOO_LONG",
                    "the codes have " + row.specimens().length() + " characters, allowed are " + LONGEST_CODES
                            + "; a code has 10"));
            return begun(row.specimens());
        }
        if (row.specimens().matches("[0-9][.,]?[0-9]*[eE][+-]?[0-9]+")) {
            problems.add(new RowProblem(
                    row.line(),
                    "specimen_code",
                    "SPREADSHEET_NUMBER",
                    "'" + row.specimens() + "' is a number in scientific notation made by a spreadsheet; format the"
                            + " column as text and enter the code from the label"));
            return begun(row.specimens());
        }
        List<String> codes = new ArrayList<>();
        for (String typed : row.specimens().split("[+;]")) {
            try {
                codes.add(LabelCode.parse(typed).value());
            } catch (NotACode fault) {
                if (typed.trim().matches("[0-9]{1,9}")) {
                    problems.add(new RowProblem(
                            row.line(),
                            "specimen_code",
                            "LOST_CHARACTERS",
                            "'" + typed.trim() + "' has digits only and too few of them; a spreadsheet may have cut"
                                    + " leading characters. Enter the code from the label"));
                } else {
                    problems.add(new RowProblem(row.line(), "specimen_code", "NOT_A_CODE", fault.getMessage()));
                }
                return begun(row.specimens());
            }
        }
        return String.join(" ", codes.stream().distinct().sorted().toList());
    }

    private static void words(ImportRow row, LocalDate today, List<RowProblem> problems) {
        int before = problems.size();
        required(row, "accession_number", row.accession(), problems);
        required(row, "test_method", row.method(), problems);
        Stage stage = value(row, "stage", row.stage(), Stage.values(), problems);
        FindingWord finding = value(row, "finding", row.finding(), FindingWord.values(), problems);
        FindingStatus status = value(row, "status", row.status(), FindingStatus.values(), problems);
        FindingReason reason = row.reason() == null
                ? null
                : value(row, "unsuitable_reason", row.reason(), FindingReason.values(), problems);
        LocalDate testedOn = row.testedOn() == null ? null : day(row, "tested_on", row.testedOn(), problems);
        LocalDate reportedOn = row.reportedOn() == null
                ? missingDay(row, problems)
                : day(row, "reported_on", row.reportedOn(), problems);
        if (problems.size() > before) {
            return;
        }
        for (FieldProblem fault :
                FindingRules.check(finding, status, stage, reason, testedOn, reportedOn, null, today)) {
            problems.add(new RowProblem(
                    row.line(), COLUMNS.getOrDefault(fault.field(), fault.field()), fault.rule(), fault.message()));
        }
    }

    private static void required(ImportRow row, String column, String value, List<RowProblem> problems) {
        if (value == null) {
            problems.add(new RowProblem(
                    row.line(), column, "REQUIRED", column + " is empty; the laboratory's report has it"));
        }
    }

    private static LocalDate missingDay(ImportRow row, List<RowProblem> problems) {
        required(row, "reported_on", null, problems);
        return null;
    }

    private static <E extends Enum<E>> E value(
            ImportRow row, String column, String given, E[] allowed, List<RowProblem> problems) {
        for (E one : allowed) {
            if (one.name().equals(given)) {
                return one;
            }
        }
        String words = Arrays.stream(allowed).map(Enum::name).collect(Collectors.joining(", "));
        problems.add(
                given == null || given.isEmpty()
                        ? new RowProblem(row.line(), column, "REQUIRED", column + " is empty; allowed: " + words)
                        : new RowProblem(
                                row.line(),
                                column,
                                "WORD_UNKNOWN",
                                "'" + given + "' is not a word of " + column + "; allowed: " + words));
        return null;
    }

    private static LocalDate day(ImportRow row, String column, String given, List<RowProblem> problems) {
        try {
            return CalendarText.day(given);
        } catch (DateTimeParseException e) {
            boolean serial = given.matches("[0-9]{5}(\\.[0-9]+)?");
            problems.add(new RowProblem(
                    row.line(),
                    column,
                    serial ? "SPREADSHEET_DATE" : "NOT_A_DATE",
                    serial
                            ? "'" + given + "' is a spreadsheet's day number; format the column as a date, year first"
                            : "'" + given + "' is not a day; write it as 2026-12-03"));
            return null;
        }
    }
}
