package org.dentary.result.imports;

import io.quarkus.arc.Arc;
import io.quarkus.arc.ManagedContext;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.DomainException;
import org.dentary.result.imports.progress.ProgressService;
import org.eclipse.microprofile.context.ManagedExecutor;
import org.jboss.logging.Logger;

/** Large files sent by page: the page answers at once and shows how far it is. The API waits, and does without. */
@ApplicationScoped
class ImportsInBackground {
    private static final Logger LOG = Logger.getLogger(ImportsInBackground.class);

    private final ImportService imports;
    private final ImportPreviewService previews;
    private final ImportPostingService postings;
    private final ProgressService progress;
    private final CurrentAccount account;
    private final ManagedExecutor executor;

    ImportsInBackground(
            ImportService imports,
            ImportPreviewService previews,
            ImportPostingService postings,
            ProgressService progress,
            CurrentAccount account,
            ManagedExecutor executor) {
        this.imports = imports;
        this.previews = previews;
        this.postings = postings;
        this.progress = progress;
        this.account = account;
        this.executor = executor;
    }

    void preview(UUID id, String laboratory, ImportService.Format format, String fileName, byte[] file) {
        progress.begin(id, "PREVIEW", fileName);
        run(id, () -> previews.preview(id, laboratory, format, fileName, file));
    }

    void post(UUID id, List<Integer> leaveOut, boolean otherTests) {
        progress.begin(id, "POSTING", imports.view(id).fileName());
        run(id, () -> postings.post(id, leaveOut, otherTests));
    }

    private void run(UUID id, Runnable act) {
        Account who = account.get();
        executor.execute(() -> {
            ManagedContext request = Arc.container().requestContext();
            request.activate();
            try {
                account.become(who);
                act.run();
            } catch (DomainException refusal) {
                progress.refuse(id, words(refusal));
            } catch (RuntimeException fault) {
                LOG.error("The import " + id + " was not done", fault);
                progress.refuse(id, "It could not be done, and nothing was stored. Tell whoever runs the service.");
            } finally {
                request.terminate();
            }
        });
    }

    private static String words(DomainException refusal) {
        return refusal.errors().isEmpty()
                ? refusal.getMessage()
                : refusal.getMessage() + " (" + refusal.errors().get(0).message() + ")";
    }
}
