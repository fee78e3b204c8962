package org.dentary.portal.find;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import org.dentary.codes.KitStem;
import org.dentary.codes.LabelCode;
import org.dentary.codes.NotACode;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.portal.code.CodeQueries;
import org.dentary.portal.code.CodeView;

/** Finds whatever was scanned or typed: a label, a kit, an accession number, an identifier, a submission, a block. */
@ApplicationScoped
public class FindService {
    private final CodeQueries codes;
    private final FindQueries queries;
    private final CurrentAccount current;

    FindService(CodeQueries codes, FindQueries queries, CurrentAccount current) {
        this.codes = codes;
        this.queries = queries;
        this.current = current;
    }

    /**
     * What was found.
     *
     * @param matches at most 51, by kind; empty where nothing was
     * @param code why there is none, as a problem's code; null where something was found
     * @param why the same in words
     */
    public record Found(List<FindMatch> matches, String code, String why) {}

    /**
     * Looks for a text.
     *
     * @param typed anything; a scanner's prefix and suffix, case, and in codes spaces, hyphens, O for 0 and I for 1 are
     *     forgiven
     */
    public Found find(String typed) {
        String text = typed == null
                ? ""
                : typed.replaceAll("^\\][A-Za-z][0-9A-Za-z]|\\p{Cntrl}", "").strip();
        if (text.isEmpty()) {
            return nothing("NOTHING_TYPED", "Scan a label, or type a code, a tag or an accession number.");
        }
        Optional<LabelCode> label = label(text);
        if (label.isPresent()) {
            List<CodeView> known = codes.codes(List.of(label.get().value()), true);
            if (!known.isEmpty()) {
                return new Found(List.of(match(known.get(0))), null, null);
            }
        }
        Account account = current.get();
        List<FindMatch> matches = queries
                .find(
                        text,
                        stem(text),
                        account.may(Act.RESULT_READ),
                        account.may(Act.SUBMISSION_READ),
                        account.may(Act.DERIVED_OUTCOME),
                        account.may(Act.LABEL_PRINT))
                .stream()
                .map(row -> FindMatch.of(row.kind(), row.key(), row.words()))
                .toList();
        return matches.isEmpty() ? why(text, label) : new Found(matches, null, null);
    }

    private static FindMatch match(CodeView code) {
        String words = code.partWords() + " label " + code.grouped();
        if (code.box() || code.part().equals("BOX")) {
            return FindMatch.of("BOX", code.code(), "Box " + code.grouped());
        }
        return code.boundTo() == null
                ? FindMatch.of("LABEL", code.code(), words + ", nothing recorded yet")
                : FindMatch.of("ANIMAL", code.boundTo(), words);
    }

    private static Found why(String text, Optional<LabelCode> label) {
        if (label.isPresent()) {
            return nothing(
                    "LABEL_UNKNOWN",
                    label.get().grouped() + " is well formed, but no such label was issued here. Scan it again, or ask"
                            + " who printed it.");
        }
        if (FindRules.isMeantAsCode(text)) {
            try {
                LabelCode.parse(text);
            } catch (NotACode fault) {
                return nothing("NOT_A_CODE", fault.getMessage());
            }
        }
        return nothing(
                "NOTHING_FOUND",
                "Nothing here is called \"" + text + "\". A code has ten characters; tags, accession and submission"
                        + " numbers must be typed whole.");
    }

    private static Found nothing(String code, String why) {
        return new Found(List.of(), code, why);
    }

    private static Optional<LabelCode> label(String text) {
        try {
            return Optional.of(LabelCode.parse(text));
        } catch (NotACode fault) {
            return Optional.empty();
        }
    }

    private static String stem(String text) {
        try {
            return KitStem.parse(text).value();
        } catch (NotACode fault) {
            return "";
        }
    }
}
