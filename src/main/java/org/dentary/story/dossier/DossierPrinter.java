package org.dentary.story.dossier;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.dentary.cautions.CautionService;
import org.dentary.cautions.CautionView;
import org.dentary.cautions.Hazard;
import org.dentary.custody.evidence.EvidenceService;
import org.dentary.custody.evidence.EvidenceView;
import org.dentary.ledger.CheckpointService;
import org.dentary.plan.PlanClock;
import org.dentary.platform.account.CurrentAccount;

/** Prints dossiers for the account at hand, with the cautions in force. */
@ApplicationScoped
class DossierPrinter {
    private final CautionService cautions;
    private final CheckpointService checkpoints;
    private final EvidenceService evidence;
    private final CurrentAccount current;
    private final PlanClock plan;
    private final Clock clock;

    DossierPrinter(
            CautionService cautions,
            CheckpointService checkpoints,
            EvidenceService evidence,
            CurrentAccount current,
            PlanClock plan,
            Clock clock) {
        this.cautions = cautions;
        this.checkpoints = checkpoints;
        this.evidence = evidence;
        this.current = current;
        this.plan = plan;
        this.clock = clock;
    }

    /** One dossier as a PDF. */
    byte[] one(Dossier dossier) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        String code = DossierRules.grouped(dossier.custody().code());
        try (DossierPaper paper = new DossierPaper(
                out, "Custody dossier " + code, printed(dossier.identity().zone()))) {
            DossierPdf.draw(paper, dossier, pictures(dossier), cautionsFor(dossier), checkpoints.keyFingerprint());
        }
        return out.toByteArray();
    }

    /**
     * A sample: how it was drawn, then its dossiers as they come.
     *
     * @param dossiers hands each dossier in the order drawn to what it is given
     */
    void sample(AuditSample sample, OutputStream out, Consumer<Consumer<Dossier>> dossiers) {
        String fingerprint = checkpoints.keyFingerprint();
        try (DossierPaper paper = new DossierPaper(
                out,
                "Audit sample " + sample.season() + " " + sample.seed(),
                printed(plan.zone().getId()))) {
            paper.part("Audit sample " + sample.season() + ", seed " + sample.seed());
            front(paper, sample);
            dossiers.accept(
                    dossier -> DossierPdf.draw(paper, dossier, pictures(dossier), cautionsFor(dossier), fingerprint));
        }
    }

    private void front(DossierPaper paper, AuditSample sample) {
        paper.line("Audit sample", DossierPaper.TITLE);
        paper.facts(
                List.of(
                        new String[] {"Season", sample.seasonName() + " (" + sample.season() + ")"},
                        new String[] {"Seed", sample.seed()},
                        new String[] {"Drawn", sample.codes().size() + " of " + sample.population() + " specimens"},
                        new String[] {"Asked for", String.valueOf(sample.size())},
                        new String[] {"Drawn at", plan.told(sample.drawnAt())},
                        new String[] {"Digest of all codes", sample.populationDigest()}),
                DossierPaper.TEXT);
        paper.heading("How it was drawn");
        paper.line(
                "Every specimen in custody of the season's animals gets the number SHA-256(seed, a blank, code), and the"
                        + " smallest numbers are the sample: each had the same chance, and who has the seed and the list"
                        + " of codes draws the same. The digest is the SHA-256 of all their codes, sorted, a line each;"
                        + " it differs once a specimen came in or was put right.",
                DossierPaper.TEXT);
        paper.heading("The specimens, in the order drawn");
        paper.line(
                sample.codes().isEmpty()
                        ? "None: no specimen of this season is in custody."
                        : sample.codes().stream().map(DossierRules::grouped).collect(Collectors.joining("   ")),
                DossierPaper.CODE);
    }

    private Map<UUID, byte[]> pictures(Dossier dossier) {
        return evidence.pictures(
                dossier.custody().events().stream()
                        .flatMap(event -> event.photos().stream())
                        .map(EvidenceView::id)
                        .toList(),
                true);
    }

    private String printed(String zone) {
        return "Printed " + Dossier.local(clock.instant(), zone) + " for "
                + current.get().username();
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
