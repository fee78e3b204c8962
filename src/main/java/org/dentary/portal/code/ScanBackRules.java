package org.dentary.portal.code;

import java.util.ArrayList;
import java.util.List;
import org.dentary.codes.KitStem;
import org.dentary.codes.LabelCode;
import org.dentary.codes.Part;
import org.dentary.kit.LabelView;
import org.dentary.platform.problem.FieldProblem;

/** When what was scanned together is not one kit. */
final class ScanBackRules {
    private ScanBackRules() {}

    /**
     * The scans that do not belong.
     *
     * @param kit the kit that the others are held against
     * @return in the order scanned; empty where all are usable labels of that kit
     */
    static List<FieldProblem> faults(List<LabelView> scanned, String kit) {
        List<FieldProblem> faults = new ArrayList<>();
        for (int i = 0; i < scanned.size(); i++) {
            LabelView label = scanned.get(i);
            String field = "codes[" + i + "]";
            String words = Part.valueOf(label.part()).label() + " label "
                    + LabelCode.parse(label.code()).grouped();
            if (!label.kitBound().equals(kit)) {
                faults.add(new FieldProblem(
                        field,
                        "NOT_ONE_KIT",
                        words + " belongs to kit " + new KitStem(label.kitBound()).grouped() + ", the others to "
                                + new KitStem(kit).grouped() + ". Stop: part them and label again"));
            } else if (label.voided()) {
                faults.add(new FieldProblem(field, "LABEL_VOID", words + " was voided. Stop: use another label"));
            }
        }
        return faults;
    }
}
