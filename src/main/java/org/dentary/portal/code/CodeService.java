package org.dentary.portal.code;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.dentary.intake.mixup.MixUpService;
import org.dentary.kit.KitService;
import org.dentary.kit.LabelService;
import org.dentary.kit.LabelView;
import org.dentary.kit.VoidLabel;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;

/** What a code is, what it belongs to, where it is; and whether several codes are one kit. */
@ApplicationScoped
public class CodeService {
    private final KitService kits;
    private final LabelService labels;
    private final CodeQueries queries;
    private final MixUpService mixUps;
    private final CurrentAccount current;

    CodeService(
            KitService kits, LabelService labels, CodeQueries queries, MixUpService mixUps, CurrentAccount current) {
        this.kits = kits;
        this.labels = labels;
        this.queries = queries;
        this.mixUps = mixUps;
        this.current = current;
    }

    /**
     * All that is known of a label.
     *
     * @throws InvalidInput where the string is no code, naming the character that looks wrong
     * @throws NotFound where it is well formed but was never issued here
     */
    public CodeView code(String typed) {
        return view(kits.label(typed).code());
    }

    /** The same with each time it was printed again, and why. */
    public KnownLabel known(String typed) {
        CodeView label = code(typed);
        return new KnownLabel(label, labels.reprints(label.code()));
    }

    /**
     * After labelling: whether everything scanned is one kit. The same code may come several times, for copies share it.
     *
     * @param typed at least two codes
     * @return the kit, with each label in the order scanned
     * @throws InvalidInput where fewer than two were scanned, or one is no code
     * @throws NotFound where one was never issued here
     * @throws RuleBroken {@code NOT_ONE_KIT} or {@code LABEL_VOID}, naming each scan at fault
     */
    public ScanBack scanBack(List<String> typed) {
        if (typed.size() < 2) {
            throw InvalidInput.field(
                    "codes", "TOO_FEW", "Scan at least two labels, such as jar and form, to compare them");
        }
        return together(typed);
    }

    /** The same of any number: a single one is refused where it is void. */
    ScanBack together(List<String> typed) {
        List<LabelView> scanned = kits.labels(typed);
        String kit = mostOften(scanned);
        List<FieldProblem> faults = ScanBackRules.faults(scanned, kit);
        if (!faults.isEmpty()) {
            keepMismatch(scanned, kit);
            throw new RuleBroken(faults.get(0).rule(), faults.get(0).message(), faults);
        }
        return new ScanBack(kit, scanned);
    }

    /** The labels of what was scanned, in that order; what is none is left out. */
    List<LabelView> read(List<String> typed) {
        Map<String, LabelView> found = kits.find(typed);
        return typed.stream().map(found::get).filter(Objects::nonNull).toList();
    }

    /** What was filled before the scan may lie in the wrong jar, so it is kept for whoever puts right. */
    private void keepMismatch(List<LabelView> scanned, String kit) {
        List<String> others = scanned.stream()
                .map(LabelView::kitBound)
                .filter(bound -> !bound.equals(kit))
                .distinct()
                .toList();
        if (!others.isEmpty()) {
            mixUps.scannedTogether(
                    kit, others, scanned.stream().map(LabelView::code).toList());
        }
    }

    /** Voids a label that nothing is bound to; see {@link LabelService#voidLabel}. */
    public boolean voidLabel(String typed, VoidLabel voiding) {
        return labels.voidLabel(typed, voiding, this::boundWords);
    }

    private String boundWords(LabelView label) {
        CodeView code = view(label.code());
        if (code.box()) {
            return "a box";
        }
        return code.boundTo() == null ? null : "the animal of kit " + code.boundTo();
    }

    CodeView view(String code) {
        return queries.codes(List.of(code), current.get().may(Act.DERIVED_OUTCOME))
                .get(0);
    }

    private static String mostOften(List<LabelView> scanned) {
        Map<String, Long> counts = scanned.stream()
                .map(LabelView::kitBound)
                .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));
        String first = scanned.get(0).kitBound();
        return counts.entrySet().stream()
                .max(Map.Entry.<String, Long>comparingByValue()
                        .thenComparing(entry -> entry.getKey().equals(first) ? 1 : 0))
                .orElseThrow()
                .getKey();
    }
}
