package org.dentary.intake;

import java.util.Arrays;
import org.dentary.jaw.key.KeyQuestion;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.FieldProblem;

/** A refusal of the intake as its form tells it: the API's field names led back to those of the form. */
final class FormFaults {
    private FormFaults() {}

    static Faults of(DomainException refusal) {
        return new Faults(Faults.of(refusal).all().stream()
                .map(fault -> new FieldProblem(field(fault.field()), fault.rule(), words(fault)))
                .toList());
    }

    /**
     * A question of the key that waits for its answer is asked again as the page asks it, where the API names its values;
     * of a kit that has a deer already, a page does not speak of ETags.
     */
    private static String words(FieldProblem fault) {
        if (fault.rule().equals("ALREADY_RECORDED") && fault.message().startsWith("animal ")) {
            return "This kit’s deer is taken in already, with other facts. Look it up under Animals: compare, and correct it there.";
        }
        String cue = fault.field().replaceFirst("^jawReading\\.", "");
        return Arrays.stream(KeyQuestion.values())
                .filter(question -> question.field().equals(cue) && fault.rule().equals("REQUIRED"))
                .map(question -> question.question() + " Pick an answer; “Unsure” is one.")
                .findFirst()
                .orElse(fault.message());
    }

    private static String field(String of) {
        if (of.startsWith("specimens[")) {
            return of.endsWith("collectedAt") ? "at" : "specimens";
        }
        if (of.startsWith("jawReading.")) {
            String cue = of.substring("jawReading.".length());
            return cue.equals("readAt") ? "at" : cue.equals("note") ? "jawNote" : "jaw." + cue;
        }
        String privately = PrivateForm.field(of);
        return privately != null ? privately : of.startsWith("identifiers[") ? "identifier" : of;
    }
}
