package org.dentary.setup.demo;

import io.quarkus.arc.All;
import io.quarkus.arc.Arc;
import io.quarkus.arc.ManagedContext;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import org.dentary.platform.problem.DomainException;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.eclipse.microprofile.context.ManagedExecutor;
import org.jboss.logging.Logger;

/**
 * Loads the demo's invented seasons beside the running service, through the imports and services that users have. The
 * service is not ready until all parts are there ({@link DemoReadiness}).
 */
@ApplicationScoped
class DemoLoader {
    private static final Logger LOG = Logger.getLogger(DemoLoader.class);

    private final List<DemoPart> parts;
    private final ManagedExecutor executor;
    private final boolean demo;
    private final Path folder;
    private volatile String state = "not begun";
    private volatile boolean ready;

    DemoLoader(
            @All List<DemoPart> parts,
            ManagedExecutor executor,
            @ConfigProperty(name = "dentary.demo", defaultValue = "false") boolean demo,
            @ConfigProperty(name = "dentary.demo-data", defaultValue = "demo-data") String folder) {
        this.parts =
                parts.stream().sorted(Comparator.comparingInt(DemoPart::order)).toList();
        this.executor = executor;
        this.demo = demo;
        this.folder = Path.of(folder);
        this.ready = !demo;
    }

    void start(@Observes StartupEvent event) {
        if (demo) {
            executor.execute(this::load);
        }
    }

    /** Whether the service may say that it is ready: at once without the demo, else when all parts are loaded. */
    boolean isReady() {
        return ready;
    }

    /** What it is at, in words. */
    String state() {
        return state;
    }

    private void load() {
        if (!Files.isDirectory(folder)) {
            state = "the folder " + folder.toAbsolutePath() + " is missing; start from the project's top, or set"
                    + " dentary.demo-data";
            LOG.error("The demo cannot be loaded: " + state);
            return;
        }
        for (DemoPart part : parts) {
            state = "loading " + part.words();
            if (!loaded(part)) {
                return;
            }
        }
        state = "loaded";
        ready = true;
        LOG.info("The demo is loaded");
    }

    private boolean loaded(DemoPart part) {
        ManagedContext request = Arc.container().requestContext();
        request.activate();
        try {
            if (!part.isLoaded()) {
                LOG.info("Loading the demo: " + part.words());
                part.load(folder);
            }
            return true;
        } catch (DomainException e) {
            String first = e.errors().isEmpty()
                    ? ""
                    : ": " + e.errors().get(0).field() + ": "
                            + e.errors().get(0).message();
            state = part.words() + " could not be loaded: " + e.getMessage() + first;
            LOG.error("The demo stops: " + state);
            return false;
        } catch (RuntimeException e) {
            state = part.words() + " could not be loaded";
            LOG.error("The demo stops: " + state, e);
            return false;
        } finally {
            request.terminate();
        }
    }
}
