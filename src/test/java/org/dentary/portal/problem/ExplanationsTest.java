package org.dentary.portal.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Holds the explanations of problems against the codes that stand in the sources. */
class ExplanationsTest {
    private static final Path SOURCES = Path.of("src/main/java/org/dentary");

    /** What raises a problem with its code first. */
    private static final Pattern CODE_FIRST = Pattern.compile(
            "(?:new (?:RuleBroken|NotFound|NotAllowed|StaleVersion|InvalidInput)|(?<![\\w.])(?:refused|unknown|nothing|refuse|confirm|flag))\\(");

    /** What raises a problem with a field before its code. */
    private static final Pattern CODE_SECOND =
            Pattern.compile("(?:InvalidInput\\.field|new (?:FieldProblem|JawProblem)|Problem\\.of)\\(");

    /** What raises a problem with its code behind other things, that being the first literal in capitals. */
    private static final Pattern CODE_SOMEWHERE = Pattern.compile(
            "(?:(?:new (?:RowProblem|LineProblem)|(?<![\\w.])(?:problem|fault|ProblemAnswers\\.signIn))\\(|answer\\(\\s*request,)");

    private static final Pattern CODE = Pattern.compile("\"([A-Z][A-Z0-9]+(?:_[A-Z0-9]+)*)\"");

    @Test
    void everyCodeOfTheSourcesIsExplained() {
        Set<String> raised = new TreeSet<>();
        sources().forEach(source -> raised.addAll(raised(source)));
        assertTrue(raised.size() > 350, "codes that the scan finds: " + raised.size());
        Set<String> unexplained = new TreeSet<>(raised);
        unexplained.removeIf(code -> Explanations.of(code).isPresent());
        assertEquals(Set.of(), unexplained, "raised, and not explained in problems.csv");
    }

    @Test
    void everyExplanationIsOfACodeOfTheSources() {
        Set<String> literals = new HashSet<>();
        for (String source : sources()) {
            Matcher code = CODE.matcher(source);
            while (code.find()) {
                literals.add(code.group(1));
            }
        }
        Set<String> idle = new TreeSet<>();
        Explanations.all().stream()
                .map(Explanation::code)
                .filter(code -> !literals.contains(code))
                .forEach(idle::add);
        assertEquals(Set.of(), idle, "explained, and nowhere in the sources");
    }

    @Test
    void everyExplanationIsOfARoomAndSaysTwoSentences() {
        for (Explanation one : Explanations.all()) {
            assertTrue(Files.isDirectory(SOURCES.resolve(one.room())), one.code() + " is of no room: " + one.room());
            assertTrue(one.meaning().matches("[A-Z].*\\."), one.code() + ": " + one.meaning());
            assertTrue(one.remedy().matches("[A-Z].*\\."), one.code() + ": " + one.remedy());
        }
    }

    @Test
    void theGroupsHoldEveryProblemOnceAndStandTogetherInTheFile() {
        List<String> grouped = Explanations.groups().stream()
                .flatMap(group -> group.problems().stream())
                .map(Explanation::code)
                .toList();
        assertEquals(Explanations.all().stream().map(Explanation::code).toList(), grouped);
    }

    @Test
    void theScanSeesCodesWhereverTheyStand() {
        assertEquals(Set.of("ONE_FIRST"), raised("throw new RuleBroken(\"ONE_FIRST\", \"as \\\"IT_IS\\\" (now)\");"));
        assertEquals(
                Set.of("ONE_OF", "TWO_OF"),
                raised("InvalidInput.field(\"x\", y ? \"ONE_OF\" : \"TWO_OF\", \"words\")"));
        assertEquals(Set.of("ONE_LINE"), raised("new LineProblem(line(3, 4), \"code\", \"ONE_LINE\", \"'\" + OTHER)"));
    }

    private static Set<String> raised(String source) {
        Set<String> found = new HashSet<>();
        at(CODE_FIRST, source).forEach(call -> found.addAll(codes(argument(call, 0))));
        at(CODE_SECOND, source).forEach(call -> found.addAll(codes(argument(call, 1))));
        at(CODE_SOMEWHERE, source)
                .forEach(call -> arguments(call).stream()
                        .limit(4)
                        .map(ExplanationsTest::codes)
                        .filter(codes -> !codes.isEmpty())
                        .findFirst()
                        .ifPresent(found::addAll));
        return found;
    }

    private static List<String> at(Pattern pattern, String source) {
        Matcher call = pattern.matcher(source);
        List<String> rests = new ArrayList<>();
        while (call.find()) {
            rests.add(source.substring(call.end()));
        }
        return rests;
    }

    private static Set<String> codes(String argument) {
        Set<String> codes = new HashSet<>();
        Matcher code = CODE.matcher(argument.replaceAll("equals\\(\"[^\"]*\"\\)", ""));
        while (code.find()) {
            codes.add(code.group(1));
        }
        return codes;
    }

    private static String argument(String call, int index) {
        List<String> all = arguments(call);
        return index < all.size() ? all.get(index) : "";
    }

    /** The arguments of a call from behind its opening bracket, cut at the commas that stand in no bracket and no text. */
    private static List<String> arguments(String call) {
        List<String> arguments = new ArrayList<>();
        int depth = 1;
        int from = 0;
        for (int i = 0; i < call.length(); i++) {
            char c = call.charAt(i);
            if (call.startsWith("\"\"\"", i)) {
                int end = call.indexOf("\"\"\"", i + 3);
                i = end < 0 ? call.length() : end + 2;
            } else if (c == '"') {
                i = endOfText(call, i);
            } else if (c == '(' || c == '[' || c == '{') {
                depth++;
            } else if (c == ')' || c == ']' || c == '}') {
                depth--;
            }
            if (depth == 0 || (depth == 1 && c == ',')) {
                arguments.add(call.substring(from, i));
                from = i + 1;
            }
            if (depth == 0) {
                return arguments;
            }
        }
        return arguments;
    }

    private static int endOfText(String call, int start) {
        int i = start + 1;
        while (i < call.length() && call.charAt(i) != '"') {
            i += call.charAt(i) == '\\' ? 2 : 1;
        }
        return i;
    }

    private static List<String> sources() {
        try (Stream<Path> files = Files.walk(SOURCES)) {
            return files.filter(file -> file.toString().endsWith(".java"))
                    .map(ExplanationsTest::read)
                    .toList();
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }
}
