package org.dentary.setup.list;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.Arrays;
import java.util.List;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

/** What a set-up list said before it was sent anew is kept: each list's table has a history, or nothing in it changes; a view has its table's. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ListHistoryTest {
    @Inject
    EntityManager entities;

    @Test
    @SuppressWarnings("unchecked")
    void everyListKeepsWhatItSaidBefore() {
        List<String> without = entities.createNativeQuery("select c.relname::text from pg_class c where c.relkind = 'r'"
                        + " and not exists (select 1 from pg_trigger t where t.tgrelid = c.oid"
                        + " and t.tgname in (c.relname || '_history', c.relname || '_append_only'))")
                .getResultList();
        assertEquals(
                List.of(),
                Arrays.stream(SetUpList.values())
                        .map(SetUpList::table)
                        .distinct()
                        .filter(without::contains)
                        .toList());
    }
}
