package org.dentary.story.dossier;

import com.lowagie.text.Phrase;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import java.util.Map;
import java.util.UUID;
import org.dentary.custody.event.CustodyEventView;
import org.dentary.custody.evidence.EvidenceView;
import org.dentary.ledger.Seal;

/** Draws every entry of a dossier: its two sides, its three times, what it tells, its photos, its hash. */
final class DossierEntries {
    private static final String NOT_SAID = "not said";
    private static final float MOST_WIDE = 240;
    private static final float MOST_HIGH = 180;

    private final DossierPaper paper;
    private final Dossier dossier;
    private final Map<UUID, byte[]> pictures;

    DossierEntries(DossierPaper paper, Dossier dossier, Map<UUID, byte[]> pictures) {
        this.paper = paper;
        this.dossier = dossier;
        this.pictures = pictures;
    }

    void draw() {
        paper.heading("Every entry, in the order of recording");
        paper.line(
                "Times are of the place where it happened. Nothing is ever changed: a correction is an entry of its"
                        + " own.",
                DossierPaper.SMALL);
        for (CustodyEventView event : dossier.custody().events()) {
            PdfPTable table = new PdfPTable(new float[] {1.6f, 2f, 1.6f, 1.6f});
            table.setWidthPercentage(100);
            table.setKeepTogether(true);
            table.setSpacingAfter(4);
            table.addCell(
                    cell("Entry " + event.sequence() + ", recorded by " + said(event.actorName()), event.words()));
            table.addCell(cell(
                    "Happened, entered, received",
                    dossier.local(event, event.occurredAt()) + "\n" + dossier.local(event, event.enteredAt()) + "\n"
                            + dossier.local(event, event.receivedAt())));
            boolean offers = event.kind().equals("HANDOVER_OFFERED");
            boolean refused = event.kind().equals("HANDOVER_REFUSED");
            String keeper = refused ? DossierRules.keeper(dossier.custody(), event) : null;
            table.addCell(cell(
                    event.relinquishedAt() == null
                            ? refused ? "Kept by" : offers ? "Offered by" : "Relinquished by"
                            : "Relinquished " + dossier.local(event, event.relinquishedAt()) + " by",
                    keeper == null ? giver(event, offers) : keeper));
            table.addCell(cell(
                    refused ? "Refused or withdrawn by" : offers ? "Offered to" : "Received by",
                    refused
                            ? said(event.actorName())
                            : offers
                                    ? said(event.counterpartyName())
                                    : event.custodian() == null ? "" : event.custodianName()));
            PdfPCell details = new PdfPCell();
            details.setColspan(4);
            details.setBorderWidth(0.6f);
            details.setPadding(3);
            Seal seal = dossier.seal(event);
            String told = String.join(". ", dossier.details(event));
            if (!told.isEmpty()) {
                details.addElement(new Phrase(told + ".", DossierPaper.TEXT));
            }
            if (event.signature() != null) {
                details.addElement(SignatureInk.of(paper.writer(), event.signature()));
            }
            event.photos().forEach(photo -> photo(details, photo));
            details.addElement(new Phrase(11, event.hash(), DossierPaper.CODE));
            details.addElement(new Phrase(
                    10,
                    "hash of this entry; "
                            + (seal == null
                                    ? "no checkpoint seals it yet"
                                    : "sealed by checkpoint " + seal.checkpoint() + " as leaf " + seal.index())
                            + "; id " + event.id(),
                    DossierPaper.SMALL));
            table.addCell(details);
            paper.add(table);
        }
    }

    /** What a photograph shows, with the digest by which the entry names it. */
    private void photo(PdfPCell details, EvidenceView photo) {
        byte[] picture = pictures.get(photo.id());
        if (picture != null) {
            details.addElement(DossierPaper.picture(picture, MOST_WIDE, MOST_HIGH));
        }
        details.addElement(new Phrase(10, DossierRules.photo(dossier, photo), DossierPaper.SMALL));
        details.addElement(new Phrase(10, photo.sha256(), DossierPaper.CODE));
    }

    private static String giver(CustodyEventView event, boolean offers) {
        if (event.fromName() != null) {
            return event.fromName();
        }
        return event.custodian() != null ? "custody begins" : offers ? NOT_SAID : "custody stayed";
    }

    private static PdfPCell cell(String label, String value) {
        PdfPCell cell = new PdfPCell();
        cell.setPadding(3);
        cell.setBorderWidth(0.6f);
        cell.addElement(new Phrase(9, label, DossierPaper.SMALL));
        cell.addElement(new Phrase(12, value, DossierPaper.BOLD));
        return cell;
    }

    private static String said(String text) {
        return text == null ? NOT_SAID : text;
    }
}
