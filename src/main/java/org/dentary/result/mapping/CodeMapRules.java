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
import org.dentary.specimen.Tissue;

/** What a code map must say before a laboratory's messages can be read by it. */
public final class CodeMapRules {
    /** Fields whose codes a map may name, as HL7 counts them. */
    public static final List<String> FIELDS = List.of("OBR-4", "OBX-3", "OBX-5", "OBX-8", "OBX-17", "OBX-23", "SPM-4");

    private CodeMapRules() {}

    /**
     * Our words by field.
     *
     * @param methods codes of the plan's test methods
     * @param laboratories codes of the plan's laboratories
     */
    public static Map<String, Set<String>> words(Set<String> methods, Set<String> laboratories) {
        return new TreeMap<>(Map.of(
                "OBX-3", names(Stage.values()),
                "OBX-5", names(FindingWord.values()),
                "OBX-8", names(FindingReason.values()),
                "OBX-17", methods,
                "OBX-23", laboratories,
                "OBR-4", methods,
                "SPM-4", names(Tissue.values())));
    }

    /**
     * Every fault; empty for none.
     *
     * @param ours our words by field
     */
    static List<FieldProblem> problems(CodeMap map, Map<String, Set<String>> ours) {
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
