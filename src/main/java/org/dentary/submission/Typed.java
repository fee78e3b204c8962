package org.dentary.submission;

import org.dentary.codes.LabelCode;
import org.dentary.codes.NotACode;

/** What was typed or scanned where a code is not asked to be one of ours. */
final class Typed {
    private Typed() {}

    /** The code as it is printed; what is no code stays as it was given, without blanks around it. */
    static String code(String typed) {
        try {
            return LabelCode.parse(typed).value();
        } catch (NotACode e) {
            return typed.trim();
        }
    }
}
