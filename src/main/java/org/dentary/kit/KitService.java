package org.dentary.kit;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.dentary.codes.KitStem;
import org.dentary.codes.LabelCode;
import org.dentary.codes.NotACode;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;

/** What a code is: the label and the kit it is bound to. Typed codes are forgiven as {@link LabelCode#parse} says. */
@ApplicationScoped
public class KitService {
    private final KitQueries queries;
    private final KitWrites writes;

    KitService(KitQueries queries, KitWrites writes) {
        this.queries = queries;
        this.writes = writes;
    }

    /**
     * The label of a typed or scanned code.
     *
     * @throws InvalidInput {@code NOT_A_CODE} where it is none, naming the character that looks wrong
     * @throws NotFound {@code LABEL_UNKNOWN} where it is well formed but was never issued here
     */
    public LabelView label(String typed) {
        LabelCode code = parse("code", typed);
        return queries.labels(List.of(code.value())).stream()
                .findFirst()
                .orElseThrow(() -> new NotFound("LABEL_UNKNOWN", unknown(code)));
    }

    /**
     * The labels of many codes by one query, in the order given; a code given twice comes twice.
     *
     * @throws InvalidInput where any is no code, naming each as {@code codes[i]}
     * @throws NotFound where any was never issued here, naming each
     */
    public List<LabelView> labels(Collection<String> typed) {
        return labels("codes", typed);
    }

    /** The same, naming each fault by the request's own name of the list. */
    public List<LabelView> labels(String list, Collection<String> typed) {
        List<FieldProblem> faults = new ArrayList<>();
        List<LabelCode> codes = new ArrayList<>();
        int index = 0;
        for (String one : typed) {
            try {
                codes.add(LabelCode.parse(one));
            } catch (NotACode fault) {
                faults.add(new FieldProblem(list + "[" + index + "]", "NOT_A_CODE", fault.getMessage()));
            }
            index++;
        }
        if (!faults.isEmpty()) {
            throw InvalidInput.of(faults);
        }
        Map<String, LabelView> known = byCode(codes);
        for (int i = 0; i < codes.size(); i++) {
            if (!known.containsKey(codes.get(i).value())) {
                faults.add(new FieldProblem(list + "[" + i + "]", "LABEL_UNKNOWN", unknown(codes.get(i))));
            }
        }
        if (!faults.isEmpty()) {
            throw new NotFound("LABEL_UNKNOWN", faults.get(0).message(), faults);
        }
        return codes.stream().map(code -> known.get(code.value())).toList();
    }

    /** The labels of many typed codes by one query, by what was typed; what is no code or unknown is left out. */
    public Map<String, LabelView> find(Collection<String> typed) {
        Map<String, LabelCode> codes = new LinkedHashMap<>();
        for (String one : typed) {
            try {
                codes.put(one, LabelCode.parse(one));
            } catch (NotACode fault) {
                continue;
            }
        }
        Map<String, LabelView> known = byCode(codes.values());
        Map<String, LabelView> found = new LinkedHashMap<>();
        codes.forEach((one, code) -> {
            LabelView label = known.get(code.value());
            if (label != null) {
                found.put(one, label);
            }
        });
        return found;
    }

    /**
     * Keeps the labels of typed codes as they are until the transaction ends, so that none is voided or bound to another
     * animal while it is being used; what is no code or unknown is left out.
     */
    public void hold(Collection<String> typed) {
        List<String> codes = new ArrayList<>();
        for (String one : typed) {
            try {
                codes.add(LabelCode.parse(one).value());
            } catch (NotACode fault) {
                continue;
            }
        }
        writes.lock(codes);
    }

    /**
     * The kit that is meant by a kit's eight characters or by any label bound to it.
     *
     * @throws InvalidInput {@code NOT_A_CODE} where it is neither
     * @throws NotFound {@code KIT_UNKNOWN} or {@code LABEL_UNKNOWN} where it was never issued here
     */
    public String kit(String typed) {
        KitStem stem;
        try {
            stem = KitStem.parse(typed);
        } catch (NotACode fault) {
            throw InvalidInput.field("kit", "NOT_A_CODE", fault.getMessage());
        }
        if (isLabel(typed)) {
            return label(typed).kitBound();
        }
        return queries.kits(List.of(stem.value())).stream()
                .findFirst()
                .orElseThrow(() -> new NotFound(
                        "KIT_UNKNOWN",
                        "Kit " + stem.grouped() + " was never issued here; scan a label of it, or look at it again"));
    }

    /** Binds labels to another kit: what is under them came from that kit's animal. Who asks and why is the caller's. */
    @Transactional
    public void rebind(Collection<String> codes, String toKit) {
        writes.rebind(codes, toKit);
    }

    /** The code that was typed, or the refusal that names the character. */
    static LabelCode parse(String field, String typed) {
        try {
            return LabelCode.parse(typed);
        } catch (NotACode fault) {
            throw InvalidInput.field(field, "NOT_A_CODE", fault.getMessage());
        }
    }

    private Map<String, LabelView> byCode(Collection<LabelCode> codes) {
        if (codes.isEmpty()) {
            return Map.of();
        }
        return queries.labels(codes.stream().map(LabelCode::value).distinct().toList()).stream()
                .collect(Collectors.toMap(LabelView::code, Function.identity()));
    }

    private static boolean isLabel(String typed) {
        try {
            LabelCode.parse(typed);
            return true;
        } catch (NotACode fault) {
            return false;
        }
    }

    private static String unknown(LabelCode code) {
        return code.grouped() + " is well formed, but no such label was issued here; scan it, or ask who printed it";
    }
}
