package org.dentary.platform.state;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.dentary.platform.account.Permissions;
import org.dentary.platform.problem.RuleBroken;
import org.junit.jupiter.api.Test;

class StatesTest {
    @Test
    void everyLineOfTheFileIsAllowedAndEveryOtherPairIsRefusedNamingTheState() {
        Set<String> things = States.all().stream().map(Transition::thing).collect(Collectors.toSet());
        int refused = 0;
        for (String thing : things) {
            List<Transition> own =
                    States.all().stream().filter(t -> t.thing().equals(thing)).toList();
            Set<String> states = new HashSet<>();
            own.forEach(t -> states.addAll(List.of(t.from(), t.to())));
            for (String state : states) {
                for (String event : own.stream().map(Transition::event).collect(Collectors.toSet())) {
                    boolean listed = own.stream()
                            .anyMatch(t -> t.from().equals(state) && t.event().equals(event));
                    if (listed) {
                        assertDoesNotThrow(() -> States.require(thing, "x", state, event));
                    } else {
                        RuleBroken fault =
                                assertThrows(RuleBroken.class, () -> States.require(thing, "x", state, event));
                        assertTrue(fault.getMessage().contains(state));
                        refused++;
                    }
                }
            }
        }
        assertTrue(refused > 10, "refusals seen: " + refused);
    }

    @Test
    void everyActIsInTheTableOfPermissionsAndNoLineStandsTwice() {
        States.all().forEach(t -> assertTrue(Permissions.all().containsKey(t.act()), t.toString()));
        assertEquals(States.all().size(), new HashSet<>(States.all()).size());
    }
}
