package org.dentary.custody.chain;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.dentary.codes.LabelCode;
import org.dentary.codes.NotACode;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;

/** The labels that were scanned or typed for an act of custody. */
@ApplicationScoped
public class Labels {
    private static final int MOST_CODES = 5_000;

    private final CustodyQueries queries;

    Labels(CustodyQueries queries) {
        this.queries = queries;
    }

    /**
     * The labels that were scanned or typed, each once, in the order given.
     *
     * @throws InvalidInput naming each that is no code or no label of ours
     */
    public List<CustodyQueries.LabelRow> labels(String field, List<String> typed) {
        if (typed.size() > MOST_CODES) {
            throw InvalidInput.field(
                    field, "TOO_MANY", typed.size() + " codes; up to " + MOST_CODES + " at once. Send them in parts");
        }
        List<FieldProblem> faults = new ArrayList<>();
        Map<String, String> codes = new java.util.LinkedHashMap<>();
        for (int i = 0; i < typed.size(); i++) {
            String at = field + "[" + i + "]";
            try {
                codes.putIfAbsent(LabelCode.parse(typed.get(i)).value(), at);
            } catch (NotACode fault) {
                faults.add(new FieldProblem(at, "NOT_A_CODE", fault.getMessage()));
            }
        }
        Map<String, CustodyQueries.LabelRow> known = codes.isEmpty() ? Map.of() : queries.labels(codes.keySet());
        codes.forEach((code, at) -> {
            if (!known.containsKey(code)) {
                faults.add(new FieldProblem(
                        at, "LABEL_UNKNOWN", code + " is well formed but no label of ours; it was never issued here"));
            }
        });
        if (!faults.isEmpty()) {
            throw InvalidInput.of(faults);
        }
        return codes.keySet().stream().map(known::get).toList();
    }

    /** One label. */
    public CustodyQueries.LabelRow label(String field, String typed) {
        List<CustodyQueries.LabelRow> labels;
        try {
            labels = labels("code", typed == null ? List.of() : List.of(typed));
        } catch (InvalidInput fault) {
            throw InvalidInput.field(field, fault.code(), fault.getMessage());
        }
        return labels.get(0);
    }

    /**
     * The label that an address names.
     *
     * @throws InvalidInput if it is no code
     * @throws NotFound if it is no label of ours
     */
    public CustodyQueries.LabelRow existingLabel(String typed) {
        try {
            return label("code", typed);
        } catch (InvalidInput fault) {
            if (fault.code().equals("LABEL_UNKNOWN")) {
                throw new NotFound(fault.code(), fault.getMessage());
            }
            throw fault;
        }
    }

    /** The zone of the first label's station, UTC without any. */
    public static ZoneId zone(List<CustodyQueries.LabelRow> labels) {
        return labels.isEmpty() ? ZoneOffset.UTC : ZoneId.of(labels.get(0).timeZone());
    }

    /** Codes in the order given, parted by commas; after ten only how many more. */
    public static String shown(List<String> codes) {
        int most = 10;
        return codes.size() <= most
                ? String.join(", ", codes)
                : String.join(", ", codes.subList(0, most)) + " and " + (codes.size() - most) + " more";
    }
}
