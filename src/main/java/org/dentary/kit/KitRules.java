package org.dentary.kit;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.dentary.codes.Part;
import org.dentary.platform.problem.FieldProblem;

/** What a block may be, beyond the shape of its fields. */
final class KitRules {
    private KitRules() {}

    /** Every part that is named twice; copies are asked for as {@code copies}, for they share one code. */
    static List<FieldProblem> partsOnce(List<Part> parts) {
        Set<Part> seen = EnumSet.noneOf(Part.class);
        List<FieldProblem> faults = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            if (!seen.add(parts.get(i))) {
                faults.add(new FieldProblem(
                        "parts[" + i + "]",
                        "PART_TWICE",
                        parts.get(i) + " is named twice; name it once and ask for more copies instead"));
            }
        }
        return faults;
    }
}
