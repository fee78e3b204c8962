package org.dentary.story.dossier;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import java.io.ByteArrayOutputStream;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.stream.Collectors;
import org.dentary.custody.event.CustodyEventView;
import org.dentary.custody.evidence.EvidenceView;
import org.dentary.ledger.Seal;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** The entries of one chain as a table. */
@Path("/api/v1/specimens/{code}/custody.csv")
public class DossierTableResource {
    static final List<String> COLUMNS = List.of(
            "code",
            "sequence",
            "kind",
            "occurred_at",
            "entered_at",
            "received_at",
            "zone",
            "recorded_by",
            "relinquished_by",
            "received_by",
            "counterparty",
            "place",
            "box",
            "other_code",
            "temperature_celsius",
            "sensor",
            "tamper_seal_before",
            "tamper_seal",
            "condition",
            "late",
            "reason",
            "evidence",
            "evidence_photos",
            "signed_by",
            "paper_form",
            "corrects",
            "corrected_by",
            "hash",
            "checkpoint",
            "leaf");

    private final DossierService dossiers;

    DossierTableResource(DossierService dossiers) {
        this.dossiers = dossiers;
    }

    @GET
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.ANIMAL_READ)
    @Operation(summary = "The chain of custody as CSV, times on the clock of the place with their offset")
    public Response csv(@PathParam("code") String code) {
        Dossier dossier = dossiers.dossier(code);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (CsvTable csv = CsvTable.on(out, COLUMNS)) {
            dossier.custody().events().forEach(event -> csv.row(cells(dossier, event)));
        }
        return Reply.file(
                out.toByteArray(),
                CsvTable.MEDIA_TYPE,
                "custody-" + dossier.custody().code() + ".csv");
    }

    private static Object[] cells(Dossier dossier, CustodyEventView event) {
        Seal seal = dossier.seal(event);
        return new Object[] {
            dossier.custody().code(),
            event.sequence(),
            event.kind(),
            at(event, event.occurredAt()),
            at(event, event.enteredAt()),
            at(event, event.receivedAt()),
            event.zone(),
            event.actorName(),
            event.fromName(),
            event.custodianName(),
            event.counterpartyName(),
            event.placeName(),
            event.box(),
            event.otherCode(),
            event.temperatureCelsius(),
            event.sensor(),
            event.tamperSealBefore(),
            event.tamperSeal(),
            event.condition(),
            event.late(),
            event.reason(),
            event.evidence(),
            event.photos().stream().map(EvidenceView::sha256).collect(Collectors.joining(" ")),
            event.signedBy(),
            event.paperForm(),
            event.corrects(),
            event.correctedBy(),
            event.hash(),
            seal == null ? null : seal.checkpoint(),
            seal == null ? null : seal.index()
        };
    }

    private static Object at(CustodyEventView event, Instant moment) {
        return moment.truncatedTo(ChronoUnit.SECONDS)
                .atZone(ZoneId.of(event.zone()))
                .toOffsetDateTime();
    }
}
