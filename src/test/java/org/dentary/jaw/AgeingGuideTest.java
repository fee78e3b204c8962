package org.dentary.jaw;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.dentary.jaw.key.JawRule;
import org.dentary.jaw.key.JawRules;
import org.dentary.jaw.key.Severity;
import org.junit.jupiter.api.Test;

/** The guide and the rules say the same. */
class AgeingGuideTest {

    @Test
    void tellsWhatEveryRuleDoes() throws IOException {
        List<String> lines = Files.readAllLines(Path.of("docs", "ageing.md"));
        for (JawRule rule : JawRules.ALL) {
            String severity = rule.severity().name().toLowerCase(Locale.ROOT);
            assertTrue(
                    lines.stream()
                            .filter(line -> line.startsWith("| " + rule.id() + " |"))
                            .anyMatch(line -> line.contains(severity)
                                    && (rule.severity() != Severity.REFUSE || rule.exit() == line.contains("exit"))),
                    () -> rule.id() + " " + rule.severity() + (rule.exit() ? " with exit" : ""));
        }
    }
}
