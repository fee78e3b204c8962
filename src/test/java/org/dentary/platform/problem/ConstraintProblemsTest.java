package org.dentary.platform.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.hibernate.exception.ConstraintViolationException;
import org.junit.jupiter.api.Test;

class ConstraintProblemsTest {
    @Test
    void aBrokenConstraintHasACodeThatIsExplainedAndItsNameInWords() {
        DomainException refusal = ConstraintProblems.of(new ConstraintViolationException("", null, "box_one_place"));
        assertEquals("CONFLICTS_WITH_RECORDS", refusal.code());
        assertEquals(409, refusal.status());
        assertTrue(refusal.getMessage().contains("(box one place)"), refusal.getMessage());
    }
}
