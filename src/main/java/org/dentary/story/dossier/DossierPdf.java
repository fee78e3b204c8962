package org.dentary.story.dossier;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.custody.CustodyView;
import org.dentary.custody.discrepancy.DiscrepancyView;
import org.dentary.kit.chain.LabelEvent;
import org.dentary.ledger.Checkpoint;
import org.dentary.ledger.InclusionProof;
import org.dentary.ledger.Seal;
import org.dentary.story.Words;

/** Draws one dossier: who has it and whether anything is wrong, what it is, every entry, what vouches for them. */
final class DossierPdf {
    private final DossierPaper paper;
    private final Dossier dossier;
    private final CustodyView chain;

    private DossierPdf(DossierPaper paper, Dossier dossier) {
        this.paper = paper;
        this.dossier = dossier;
        this.chain = dossier.custody();
    }

    /**
     * Adds a dossier to a paper, from a fresh page on.
     *
     * @param pictures small pictures of the photographs that its entries show, JPEG; erased ones are left out
     * @param cautions to print at its end
     * @param fingerprint of the public key that signs checkpoints
     */
    static void draw(
            DossierPaper paper,
            Dossier dossier,
            Map<UUID, byte[]> pictures,
            List<String> cautions,
            String fingerprint) {
        DossierPdf pdf = new DossierPdf(paper, dossier);
        String code = DossierRules.grouped(dossier.custody().code());
        paper.part("Custody dossier " + code);
        paper.top("Chain of custody", dossier.what(), dossier.custody().code());
        pdf.exceptions();
        pdf.now();
        pdf.identity();
        pdf.label();
        new DossierEntries(paper, dossier, pictures).draw();
        pdf.attributions();
        pdf.discrepancies();
        pdf.vouchers(fingerprint);
        paper.heading("Cautions");
        cautions.forEach(one -> paper.line(one, DossierPaper.SMALL));
        paper.line(
                "The written instructions of the laboratory, the health agency and the safety officer stand above this"
                        + " paper.",
                DossierPaper.SMALL);
        paper.line("End of dossier " + code + ".", DossierPaper.BOLD);
    }

    /** Before anything else, for ever. */
    private void exceptions() {
        dossier.exceptions().forEach(one -> paper.line(one.sentence(), DossierPaper.BOLD));
        chain.identityExceptions().forEach(one -> {
            paper.line("Why it could not be collected again: " + one.said("reason"), DossierPaper.TEXT);
            paper.line("On what evidence: " + one.said("evidence"), DossierPaper.TEXT);
            if (!one.isOpen()) {
                paper.line("Why " + words(one.state()) + ": " + one.decisionSaid(), DossierPaper.TEXT);
            }
        });
    }

    private void now() {
        paper.heading("Now");
        boolean there = chain.placeName() == null || chain.placeName().equals(chain.custodianName());
        String place = chain.placeErased() != null
                ? ", at a place whose words were " + chain.placeErased().told(chain.zone())
                : there ? "" : ", " + chain.placeName();
        String box = chain.box() == null ? "" : ", in box " + DossierRules.grouped(chain.box());
        paper.line(
                (chain.destroyed() ? "Destroyed. Last with " : "With ") + chain.custodianName() + place + box
                        + ", since " + dossier.local(chain.since())
                        + (dossier.identity().isBox() ? ". Opened " : ". Collected ")
                        + dossier.local(chain.collectedAt()) + ", " + Words.asAge(chain.hoursSinceCollection())
                        + " ago.",
                DossierPaper.BOLD);
        if (chain.onHold()) {
            paper.line("On hold: it must not be destroyed.", DossierPaper.BOLD);
        }
        if (chain.offer() != null) {
            paper.line(
                    "Offered to " + chain.offer().toName() + " on "
                            + dossier.local(chain.offer().offeredAt()) + ", not answered yet.",
                    DossierPaper.TEXT);
        }
        List<String> concerns = dossier.concerns();
        if (concerns.isEmpty()) {
            paper.line("Nothing was found wrong with its custody.", DossierPaper.TEXT);
        } else {
            paper.line("Look closer:", DossierPaper.BOLD);
            concerns.forEach(one -> paper.line("\u2022 " + one, DossierPaper.TEXT));
        }
    }

    private void identity() {
        Identity identity = dossier.identity();
        List<String[]> facts = new ArrayList<>();
        facts.add(new String[] {"Code", DossierRules.grouped(identity.code()) + ", part " + words(identity.part())});
        facts.add(new String[] {
            "Kit",
            identity.kitBound() + (identity.isReAttributed() ? ", printed for kit " + identity.kitPrinted() : "")
                    + ", issued to " + identity.issuedTo()
        });
        if (identity.isSpecimen()) {
            facts.add(new String[] {
                "Tissue",
                words(identity.tissue()) + (identity.tissueText() == null ? "" : " (" + identity.tissueText() + ")")
                        + ", side " + words(identity.side()) + ", condition when taken " + words(identity.condition())
            });
            if (identity.parent() != null) {
                facts.add(new String[] {"Cut from", DossierRules.grouped(identity.parent())});
            }
            facts.add(new String[] {"Taken", dossier.local(identity.collectedAt()) + " by " + identity.collectedBy()});
            dossier.preservations()
                    .forEach(kept -> facts.add(new String[] {
                        "Kept",
                        words(kept.preservation()) + " from " + dossier.local(kept.since()) + ", said by " + kept.by()
                                + (kept.reason() == null ? "" : ": " + kept.reason())
                    }));
            dossier.corrections()
                    .forEach(one -> facts.add(new String[] {
                        "Record corrected", dossier.local(one.at()) + " by " + one.by() + ": " + one.reason()
                    }));
        }
        if (identity.isTakenIn()) {
            facts.add(new String[] {
                "Animal",
                identity.species() + ", " + words(identity.sex()) + ", died "
                        + (identity.diedOn() == null ? "on a day not known" : Words.asDay(identity.diedOn()))
                        + (identity.sameAs() == null ? "" : "; the same animal as kit " + identity.sameAs())
            });
            facts.add(new String[] {
                "Where",
                "unit " + (identity.unit() == null ? "not known" : identity.unit()) + ", station " + identity.station()
                        + ", " + (identity.season() == null ? "no season" : identity.season())
            });
        }
        paper.heading("What it is");
        paper.facts(facts, DossierPaper.TEXT);
    }

    private void label() {
        paper.heading("Its label");
        if (dossier.label().events().isEmpty()) {
            paper.line("Issued before labels were on the ledger.", DossierPaper.TEXT);
        }
        for (LabelEvent event : dossier.label().events()) {
            Seal seal = dossier.seal(event);
            paper.line(
                    dossier.local(event) + ": " + dossier.told(event)
                            + (seal == null
                                    ? ""
                                    : " Sealed by checkpoint " + seal.checkpoint() + " as leaf " + seal.index() + "."),
                    DossierPaper.TEXT);
            paper.line(event.hash(), DossierPaper.CODE);
        }
    }

    private void attributions() {
        if (dossier.reAttributions().isEmpty()) {
            return;
        }
        paper.heading("Swapped labels");
        for (Dossier.ReAttribution one : dossier.reAttributions()) {
            paper.line(
                    dossier.local(one.askedAt()) + ": " + one.askedBy() + " asked to put what is under "
                            + (one.isOfWhatItWasCutFrom() ? one.code() + ", which it was cut from," : "this label")
                            + " from kit " + one.fromKit() + " to kit " + one.toKit() + ". Reason: " + one.reason()
                            + ". Evidence: " + one.evidence() + ".",
                    DossierPaper.TEXT);
            paper.line(
                    one.decidedBy() == null
                            ? "Not decided yet: it counts for neither animal."
                            : dossier.local(one.decidedAt()) + ": " + words(one.state()) + " by " + one.decidedBy()
                                    + (one.decisionReason() == null ? "" : ": " + one.decisionReason()) + ".",
                    DossierPaper.TEXT);
        }
    }

    private void discrepancies() {
        List<DiscrepancyView> all = new ArrayList<>(chain.discrepancies());
        all.addAll(chain.settled());
        if (all.isEmpty()) {
            return;
        }
        paper.heading("Discrepancies");
        all.forEach(one -> paper.line(
                words(one.kind()) + ", opened " + dossier.local(one.openedAt()) + " by " + one.openedByName() + "; "
                        + (one.closedAt() == null
                                ? "open, " + one.ownerName() + " settles it by " + Words.asDay(one.dueOn())
                                : "settled " + dossier.local(one.closedAt()) + " as " + words(one.outcome()))
                        + (one.seen(chain.zone()) == null ? "" : ". Evidence: " + one.seen(chain.zone())) + ".",
                DossierPaper.TEXT));
    }

    private void vouchers(String fingerprint) {
        paper.heading("What vouches for these entries");
        paper.line(
                "Each entry's hash covers the entry and the hash of the one before it, so the last one vouches for all."
                        + " It lies under a signed checkpoint; docs/custody-verification.md tells how to check that"
                        + " without this service.",
                DossierPaper.SMALL);
        InclusionProof proof = dossier.proof();
        if (proof == null) {
            paper.line("No checkpoint vouches for the last entry.", DossierPaper.BOLD);
        } else {
            Checkpoint checkpoint = proof.checkpoint();
            List<String[]> facts = new ArrayList<>();
            facts.add(new String[] {"Last entry's hash", proof.event().hash()});
            facts.add(new String[] {"Leaf", proof.index() + " of " + checkpoint.treeSize()});
            for (int i = 0; i < proof.path().size(); i++) {
                facts.add(new String[] {
                    i == 0 ? "Path, lowest first" : "", proof.path().get(i)
                });
            }
            facts.addAll(checkpointFacts(checkpoint));
            facts.add(new String[] {"Fingerprint of key", fingerprint});
            paper.facts(facts, DossierPaper.CODE);
        }
        if (dossier.erasures() != null) {
            paper.line(dossier.erasures(), DossierPaper.SMALL);
        }
        paper.line(
                "It shows that nothing was changed, removed or put in since it was recorded and sealed. It does not show"
                        + " that the first entry was true, nor that a record is good enough for a court: that is for"
                        + " your counsel.",
                DossierPaper.SMALL);
    }

    private List<String[]> checkpointFacts(Checkpoint checkpoint) {
        return List.of(
                new String[] {
                    "Checkpoint",
                    checkpoint.number() + ", made " + dossier.local(checkpoint.madeAt()) + " (sealed as "
                            + checkpoint.madeAt() + ")"
                },
                new String[] {"Its id", checkpoint.id().toString()},
                new String[] {"Its root", checkpoint.root()},
                new String[] {"Hash of the one before", checkpoint.previous()},
                new String[] {"Its own hash", checkpoint.hash()},
                new String[] {"Signature (Ed25519)", checkpoint.signature()},
                new String[] {"Public key", checkpoint.key()});
    }

    private static String words(String code) {
        return DossierRules.words(code);
    }
}
