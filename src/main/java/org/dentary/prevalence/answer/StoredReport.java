package org.dentary.prevalence.answer;

import java.util.Map;
import java.util.UUID;

/** A kind of report whose first answer on a cut is kept: what it takes to compute such an answer again. */
public interface StoredReport {
    /** Whether this kind of report answers a question that was stored. */
    boolean answers(Map<String, Object> question);

    /**
     * The answer as it would be given now, none of it stored.
     *
     * @param question as it was stored, one that this kind {@link #answers}
     * @param mediaType of the stored answer
     * @throws org.dentary.platform.problem.DomainException if the question can no longer be asked
     */
    String again(Map<String, Object> question, UUID cut, String mediaType);
}
