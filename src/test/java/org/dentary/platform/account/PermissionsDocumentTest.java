package org.dentary.platform.account;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.reflect.Modifier;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.dentary.platform.state.States;
import org.junit.jupiter.api.Test;

/** {@code docs/permissions.md} is written from the table; -Ddentary.write-docs=true writes it anew. */
class PermissionsDocumentTest {
    @Test
    void theDocumentSaysWhatTheTableSays() throws IOException {
        StringBuilder text = new StringBuilder("""
                # Who may do what

                Written from `org.dentary.platform.account.Permissions` by a test. What is not in the table is allowed to
                nobody. Limits within an act (own station, released outcomes only, a second person) are kept by the room.

                | act |""");
        for (Role role : Role.values()) {
            text.append(' ')
                    .append(role.words().toLowerCase(java.util.Locale.ROOT))
                    .append(" |");
        }
        text.append("\n|---|---|---|---|---|---|---|\n");
        Permissions.all().forEach((act, roles) -> {
            text.append("| ").append(act).append(" |");
            for (Role role : Role.values()) {
                text.append(roles.contains(role) ? " yes |" : " - |");
            }
            text.append('\n');
        });
        text.append("\n# What may become what\n\nWritten from `states.csv`.\n");
        for (String thing : States.all().stream().map(t -> t.thing()).distinct().toList()) {
            text.append("\n## ").append(thing).append("\n\n```mermaid\nstateDiagram-v2\n");
            States.all().stream()
                    .filter(t -> t.thing().equals(thing))
                    .forEach(t -> text.append("    ")
                            .append(t.from())
                            .append(" --> ")
                            .append(t.to())
                            .append(": ")
                            .append(t.event())
                            .append('\n'));
            text.append("```\n\n| from | event | to | act | route |\n|---|---|---|---|---|\n");
            States.all().stream()
                    .filter(t -> t.thing().equals(thing))
                    .forEach(t -> text.append(String.format(
                            "| %s | %s | %s | %s | `%s` |%n", t.from(), t.event(), t.to(), t.act(), t.route())));
        }
        Path file = Path.of("docs", "permissions.md");
        if (Boolean.getBoolean("dentary.write-docs")) {
            Files.writeString(file, text);
        }
        assertEquals(Files.readString(file), text.toString());
    }

    @Test
    void everyActHasItsRowAndNothingUnnamedIsAllowed() throws IllegalAccessException {
        Set<String> acts = Arrays.stream(Act.class.getFields())
                .filter(field -> Modifier.isStatic(field.getModifiers()))
                .map(field -> {
                    try {
                        return (String) field.get(null);
                    } catch (IllegalAccessException e) {
                        throw new IllegalStateException(e);
                    }
                })
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(acts, new TreeSet<>(Permissions.all().keySet()));
        for (Role role : Role.values()) {
            assertFalse(Permissions.allows(role, "anything-else"));
        }
        assertTrue(Permissions.of(Role.NOTIFIER).contains(Act.CONTACT_READ));
        assertFalse(Permissions.of(Role.EPIDEMIOLOGIST).contains(Act.DERIVED_OUTCOME));
    }
}
