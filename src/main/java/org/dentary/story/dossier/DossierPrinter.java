package org.dentary.story.dossier;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.ByteArrayOutputStream;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.dentary.cautions.CautionService;
import org.dentary.cautions.CautionView;
import org.dentary.cautions.Hazard;
import org.dentary.ledger.CheckpointService;
import org.dentary.platform.account.CurrentAccount;

/** Prints dossiers for the account at hand, with the cautions in force. */
@ApplicationScoped
class DossierPrinter {
    private final CautionService cautions;
    private final CheckpointService checkpoints;
    private final CurrentAccount current;
    private final Clock clock;

    DossierPrinter(CautionService cautions, CheckpointService checkpoints, CurrentAccount current, Clock clock) {
        this.cautions = cautions;
        this.checkpoints = checkpoints;
        this.current = current;
        this.clock = clock;
    }

    /** One dossier as a PDF. */
    byte[] one(Dossier dossier) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        String code = DossierRules.grouped(dossier.custody().code());
        try (DossierPaper paper = new DossierPaper(
                out, "Custody dossier " + code, printed(dossier.identity().zone()))) {
            DossierPdf.draw(paper, dossier, cautionsFor(dossier), checkpoints.keyFingerprint());
        }
        return out.toByteArray();
    }

    String printed(String zone) {
        return "Printed " + Dossier.local(clock.instant(), zone) + " for "
                + current.get().username();
    }

    String printed() {
        return printed(ZoneOffset.UTC.getId());
    }

    /** Names and places are on every dossier; formalin only where the specimen was in it. */
    List<String> cautionsFor(Dossier dossier) {
        List<CautionView> shown = new ArrayList<>(cautions.at(Hazard.CONTACT));
        boolean formalin = dossier.preservations().stream()
                .anyMatch(kept -> kept.preservation().equals("FORMALIN"));
        if (formalin) {
            shown.addAll(cautions.at(Hazard.FORMALIN));
        }
        return shown.stream()
                .distinct()
                .map(caution -> caution.text() + " Who decides: " + caution.authority()
                        + (caution.reviewed() ? "" : "; not reviewed locally") + ".")
                .toList();
    }
}
