package org.dentary.submission.packing;

import java.util.List;
import java.util.stream.Stream;
import org.dentary.platform.problem.FieldProblem;

/**
 * What speaks against one specimen in a submission.
 *
 * @param never what nothing passes
 * @param unlessReasoned what a reason agreed with the laboratory passes
 */
public record Verdict(String code, List<FieldProblem> never, List<FieldProblem> unlessReasoned) {
    public Verdict {
        never = List.copyOf(never);
        unlessReasoned = List.copyOf(unlessReasoned);
    }

    /** Whether nothing speaks against it. */
    public boolean isClear() {
        return never.isEmpty() && unlessReasoned.isEmpty();
    }

    /** Everything, or with a reason what nothing passes. */
    public List<FieldProblem> faults(boolean isReasoned) {
        return isReasoned || !never.isEmpty() ? never : unlessReasoned;
    }

    /** The same with its code as the field of each fault and in its words, for a list about many tubes. */
    public Verdict named() {
        return new Verdict(code, named(never), named(unlessReasoned));
    }

    private List<FieldProblem> named(List<FieldProblem> faults) {
        return faults.stream()
                .map(fault -> new FieldProblem(
                        code,
                        fault.rule(),
                        fault.message().contains(code) ? fault.message() : code + ": " + fault.message()))
                .toList();
    }

    /** Everything that speaks against it. */
    public List<FieldProblem> all() {
        return Stream.concat(never.stream(), unlessReasoned.stream()).toList();
    }

    /** Names of the rules that a reason passes. */
    public List<String> passable() {
        return unlessReasoned.stream().map(FieldProblem::rule).distinct().toList();
    }
}
