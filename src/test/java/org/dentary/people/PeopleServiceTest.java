package org.dentary.people;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.AccountService;
import org.dentary.platform.account.Role;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotAllowed;
import org.dentary.platform.problem.NotFound;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class PeopleServiceTest {
    @Inject
    SeasonFixture season;

    @Inject
    PeopleService people;

    @Inject
    AccountService accounts;

    @BeforeEach
    void setUp() {
        season.ensure();
    }

    @ParameterizedTest
    @CsvSource({
        "T_LIAISON, PERSON, T_LIAISON",
        "liaison, PERSON, T_LIAISON",
        "LIAISON, PERSON, T_LIAISON",
        "device, PERSON, device",
        "T_FREEZER, STORE, T_FREEZER",
        "T_COURIER, PARTY, T_COURIER",
        "t_lab, PARTY, T_LAB"
    })
    void aCustodianIsAPersonAnAccountAStoreAPartyOrALaboratory(String typed, Custodian.Kind kind, String code) {
        Custodian found = people.custodian(typed);
        assertEquals(kind, found.kind());
        assertEquals(code, found.code());
    }

    @Test
    void nobodyIsMeantByAnythingElse() {
        assertThrows(InvalidInput.class, () -> people.custodian("the usual place"));
        assertThrows(InvalidInput.class, () -> people.custodian(null));
        assertEquals(
                2, people.custodians(List.of("T_LIAISON", "sampler", "nobody")).size());
    }

    @Test
    void aStoreIsUsedByItsKeeperAndThoseAllowed() {
        assertTrue(people.mayUse(SeasonFixture.STORE, "T_SAMPLER"));
        assertTrue(people.mayUse(SeasonFixture.STORE, "T_LIAISON"));
        assertFalse(people.mayUse(SeasonFixture.STORE, "T_AUDITOR"));
        StoreView store = people.stores().stream()
                .filter(s -> s.code().equals(SeasonFixture.STORE))
                .findFirst()
                .orElseThrow();
        assertEquals(List.of("T_LIAISON", "T_SAMPLER"), store.people());
    }

    @Test
    void thePersonsListNamesEveryone() {
        assertEquals("Test agency", people.person("T_AUDITOR").organisation());
        assertThrows(NotFound.class, () -> people.person("T_NOBODY"));
        assertTrue(people.parties().stream().anyMatch(p -> p.code().equals(SeasonFixture.PARTY)));
    }

    @Test
    void theProtocolMustBeAcknowledgedOnce() {
        String name = "fresh-" + UUID.randomUUID().toString().substring(0, 13);
        accounts.put(name, null, Role.SAMPLER, List.of("*"), "test");
        Account account = accounts.find(name).orElseThrow();
        assertThrows(NotAllowed.class, () -> people.requireAcknowledged(account));
        people.acknowledge(account);
        people.acknowledge(account);
        people.requireAcknowledged(account);
    }
}
