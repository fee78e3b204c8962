package org.dentary.platform;

import io.quarkus.arc.DefaultBean;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.Duration;

/** The one source of "now", in the database's own microseconds so that what is hashed is what is stored. */
@ApplicationScoped
class ClockProducer {
    @Produces
    @Singleton
    @DefaultBean
    Clock clock() {
        return Clock.tick(Clock.systemUTC(), Duration.ofNanos(1_000));
    }
}
