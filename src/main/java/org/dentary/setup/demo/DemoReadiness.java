package org.dentary.setup.demo;

import jakarta.enterprise.context.ApplicationScoped;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;

/** The demo is ready only when its seasons are loaded; without the demo this is always ready. */
@Readiness
@ApplicationScoped
class DemoReadiness implements HealthCheck {
    private final DemoLoader loader;

    DemoReadiness(DemoLoader loader) {
        this.loader = loader;
    }

    @Override
    public HealthCheckResponse call() {
        return HealthCheckResponse.named("set-up")
                .status(loader.isReady())
                .withData("demo", loader.state())
                .build();
    }
}
