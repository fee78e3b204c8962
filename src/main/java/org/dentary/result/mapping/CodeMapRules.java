package org.dentary.result.mapping;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.result.FindingReason;
import org.dentary.result.FindingWord;
import org.dentary.result.Stage;
import org.dentary.result.imports.CodeMap;
import org.dentary.specimen.Tissue;

/** What a code map must say before a laboratory's messages can be read by it. */
final class CodeMapRules {
    private CodeMapRules() {}

    /**
     * Every fault; empty for none.
     *
     * @param methods codes of the plan's test methods
     */
    static List<FieldProblem> problems(CodeMap map, Set<String> methods) {
        Map<String, Set<String>> ours = new TreeMap<>(Map.of(
                "OBX-3", names(Stage.values()),
                "OBX-5", names(FindingWord.values()),
                "OBX-8", names(FindingReason.values()),
                "OBX-17", methods,
                "OBR-4", methods,
                "SPM-4", names(Tissue.values())));
        List<FieldProblem> problems = new ArrayList<>();
        new TreeMap<>(map.codes()).forEach((field, codes) -> {
            Set<String> allowed = ours.get(field);
            if (allowed == null) {
                problems.add(new FieldProblem(
                        "codes",
                        "FIELD_UNKNOWN",
                        "'" + field + "' takes no mapped codes; only " + String.join(", ", ours.keySet())));
                return;
            }
            codes.forEach((theirs, word) -> {
                if (theirs.isBlank() || theirs.chars().filter(c -> c == '^').count() > 1) {
                    problems.add(new FieldProblem(
                            "codes",
                            "NOT_A_CODE",
                            "'" + theirs + "' of " + field + " is no code; write it as identifier^system, such as"
                                    + " 260415000^SCT, or the identifier alone"));
                }
                if (!allowed.contains(word)) {
                    problems.add(new FieldProblem(
                            "codes",
                            "WORD_UNKNOWN",
                            "'" + word + "' is no word for " + field + "; one of "
                                    + String.join(", ", new TreeSet<>(allowed))));
                }
            });
        });
        return problems;
    }

    private static Set<String> names(Enum<?>[] values) {
        return Arrays.stream(values).map(Enum::name).collect(Collectors.toCollection(TreeSet::new));
    }
}
