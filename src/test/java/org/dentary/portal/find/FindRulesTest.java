package org.dentary.portal.find;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FindRulesTest {
    @ParameterizedTest
    @CsvSource({
        "A2C4-B6H8-JK, true",
        "a2c4 d6h8 j, true",
        "A2C4D6H8JKM, true",
        "A2C4D6H8JKMN, false",
        "ABCDEFGHJK, false",
        "1234567890, false",
        "AB12345678, false",
        "A2C4, false"
    })
    void onlyWhatLooksLikeACodeIsJudgedAsOne(String text, boolean meant) {
        assertEquals(meant, FindRules.isMeantAsCode(text));
    }
}
