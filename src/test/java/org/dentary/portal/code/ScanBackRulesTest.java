package org.dentary.portal.code;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.dentary.codes.KitStem;
import org.dentary.codes.Part;
import org.dentary.kit.LabelView;
import org.dentary.platform.problem.FieldProblem;
import org.junit.jupiter.api.Test;

class ScanBackRulesTest {
    @Test
    void theScanThatDoesNotBelongIsNamedAndAVoidOneToo() {
        LabelView jar = label("C2D4F6H8", Part.NODE_LEFT, false);
        LabelView form = label("C2D4F6H8", Part.FORM, false);
        LabelView torn = label("C2D4F6H8", Part.STUB, true);
        LabelView stranger = label("D2D4F6H8", Part.FORM, false);
        assertTrue(ScanBackRules.faults(List.of(jar, form, jar), "C2D4F6H8").isEmpty());
        List<FieldProblem> faults = ScanBackRules.faults(List.of(jar, stranger, torn), "C2D4F6H8");
        assertEquals(
                List.of("codes[1] NOT_ONE_KIT", "codes[2] LABEL_VOID"),
                faults.stream().map(f -> f.field() + " " + f.rule()).toList());
    }

    private static LabelView label(String kit, Part part, boolean voided) {
        return new LabelView(
                new KitStem(kit).label(part).value(), part.name(), kit, kit, "block", "season", "station", voided);
    }
}
