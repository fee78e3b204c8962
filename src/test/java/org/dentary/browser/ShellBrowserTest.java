package org.dentary.browser;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ShellBrowserTest extends Browser {
    @Test
    void theSignInPageIsReadableAndReachableAtBothSizesInLightAndDark() {
        look(null, "/sign-in", "sign-in");
    }
}
