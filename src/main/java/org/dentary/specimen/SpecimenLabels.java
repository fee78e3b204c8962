package org.dentary.specimen;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.dentary.codes.LabelCode;
import org.dentary.codes.NotACode;
import org.dentary.kit.LabelView;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.RuleBroken;

/** Which labels specimens of a kit may be recorded under. */
final class SpecimenLabels {
    private SpecimenLabels() {}

    /** The specimens under their labels' kept codes; what is no label or comes twice becomes a problem. */
    static List<TakeSpecimen> kept(
            List<TakeSpecimen> given, Map<String, LabelView> labels, String at, List<FieldProblem> problems) {
        List<TakeSpecimen> kept = new ArrayList<>();
        Set<String> seen = new LinkedHashSet<>();
        for (int i = 0; i < given.size(); i++) {
            TakeSpecimen specimen = given.get(i);
            String field = at.isEmpty() ? "code" : at + "[" + i + "].code";
            if (specimen.code() == null || specimen.code().isBlank()) {
                problems.add(new FieldProblem(field, "REQUIRED", "scan or type the label's ten characters"));
                continue;
            }
            LabelView label = labels.get(specimen.code());
            if (label == null) {
                problems.add(new FieldProblem(field, unknownRule(specimen.code()), unknown(specimen.code())));
            } else if (!seen.add(label.code())) {
                problems.add(new FieldProblem(
                        field, "TWICE", "Label " + label.code() + " is given twice; each jar or bag has its own"));
            } else {
                kept.add(specimen.under(label.code()));
            }
        }
        if (!problems.isEmpty()) {
            throw InvalidInput.of(problems);
        }
        return kept;
    }

    private static String unknownRule(String typed) {
        try {
            LabelCode.parse(typed);
            return "LABEL_UNKNOWN";
        } catch (NotACode fault) {
            return "NOT_A_CODE";
        }
    }

    private static String unknown(String typed) {
        try {
            return LabelCode.parse(typed).grouped()
                    + " is well formed, but no such label was issued here; scan it again, or ask who printed it";
        } catch (NotACode fault) {
            return fault.getMessage();
        }
    }

    /** @throws RuleBroken if the label is another kit's or void */
    static void requireUsable(String kit, LabelView label, String path) {
        if (!label.kitBound().equals(kit)) {
            String message = "Label " + label.code() + " belongs to kit " + label.kitBound() + ", not to kit " + kit
                    + "; scan the label of this animal's kit. If the labels were swapped, ask to have it put right";
            throw new RuleBroken(
                    "LABEL_OF_OTHER_KIT",
                    message,
                    List.of(new FieldProblem(path + "code", "LABEL_OF_OTHER_KIT", message)));
        }
        if (label.voided()) {
            String message = "Label " + label.code() + " is void; use the label that replaced it";
            throw new RuleBroken(
                    "LABEL_VOIDED", message, List.of(new FieldProblem(path + "code", "LABEL_VOIDED", message)));
        }
    }
}
