package org.dentary.custody.desk;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Response;
import java.io.ByteArrayOutputStream;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.dentary.custody.discrepancy.DiscrepancyService;
import org.dentary.custody.handover.ActingFor;
import org.dentary.custody.handover.HandOverView;
import org.dentary.custody.handover.OpenOffers;
import org.dentary.custody.identity.IdentityExceptionViews;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** The desk's tables as CSV. */
@Path("/api/v1/custody")
public class DeskTablesResource {
    private static final int MOST = 100_000;

    private final OpenOffers offers;
    private final HoldingsQueries holdings;
    private final DiscrepancyService discrepancies;
    private final IdentityExceptionViews identities;

    DeskTablesResource(
            OpenOffers offers,
            HoldingsQueries holdings,
            DiscrepancyService discrepancies,
            IdentityExceptionViews identities) {
        this.offers = offers;
        this.holdings = holdings;
        this.discrepancies = discrepancies;
        this.identities = identities;
    }

    @GET
    @Path("holdings.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    @Operation(summary = "What I have in hand and what lies in the stores that I may use, as CSV")
    public Response holdings() {
        ActingFor acting = offers.acting();
        return table(
                "holdings",
                List.of("code", "part", "custodian", "box", "place", "collected_at", "offered"),
                csv -> Stream.concat(holdings.inHand(acting, MOST).stream(), holdings.inStores(acting, MOST).stream())
                        .forEach(one -> csv.row(
                                one.code(),
                                one.part(),
                                one.custodian(),
                                one.box(),
                                one.place(),
                                one.collectedAt()
                                        .truncatedTo(ChronoUnit.SECONDS)
                                        .atZone(ZoneId.of(one.zone()))
                                        .toOffsetDateTime(),
                                one.offered())));
    }

    @GET
    @Path("offers.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    @Operation(summary = "Open hand-overs to me and by me, the longest waiting first, as CSV")
    public Response offers() {
        return table(
                "offers",
                List.of("hand_over", "direction", "from", "to", "place", "occurred_at", "codes", "overdue"),
                csv -> {
                    offers.toMe(MOST).forEach(one -> row(csv, "TO_ME", one));
                    offers.fromMe(MOST).forEach(one -> row(csv, "BY_ME", one));
                });
    }

    private static void row(CsvTable csv, String direction, HandOverView one) {
        Instant at = one.occurredAt().truncatedTo(ChronoUnit.SECONDS);
        csv.row(one.id(), direction, one.fromName(), one.toName(), one.place(), at, one.offered(), one.overdue());
    }

    @GET
    @Path("discrepancies.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed({Act.DISCREPANCY, Act.AUDIT_READ})
    @Operation(summary = "What does not add up as CSV, the next due first; a sampler's own")
    public Response discrepancies(@QueryParam("all") boolean all) {
        return table(
                "discrepancies",
                List.of(
                        "id",
                        "code",
                        "kind",
                        "owner",
                        "due_on",
                        "overdue",
                        "evidence",
                        "evidence_erased_at",
                        "outcome",
                        "opened_at",
                        "closed_at"),
                csv -> discrepancies
                        .mine(all ? null : true, MOST)
                        .forEach(one -> csv.row(
                                one.id(),
                                one.code(),
                                one.kind(),
                                one.ownerName(),
                                one.dueOn(),
                                one.overdue(),
                                one.evidence(),
                                one.evidenceErased() == null
                                        ? null
                                        : one.evidenceErased().at(),
                                one.outcome(),
                                one.openedAt(),
                                one.closedAt())));
    }

    @GET
    @Path("identity-exceptions.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.ANIMAL_READ)
    @Operation(summary = "Identity exceptions as CSV, the newest first")
    public Response identityExceptions() {
        return table(
                "identity-exceptions",
                List.of(
                        "id",
                        "code",
                        "kit",
                        "problem",
                        "problem_text",
                        "irreplaceable",
                        "evidence",
                        "state",
                        "asked_by",
                        "asked_at",
                        "decided_by",
                        "decided_at",
                        "decision_reason"),
                csv -> identities
                        .all(null, MOST)
                        .forEach(one -> csv.row(
                                one.id(),
                                one.code(),
                                one.kit(),
                                one.problem(),
                                one.problemText(),
                                one.irreplaceable(),
                                one.evidence(),
                                one.state(),
                                one.askedByName(),
                                one.askedAt(),
                                one.decidedByName(),
                                one.decidedAt(),
                                one.decisionReason())));
    }

    private static Response table(String name, List<String> columns, Consumer<CsvTable> rows) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (CsvTable csv = CsvTable.on(out, columns)) {
            rows.accept(csv);
        }
        return Reply.file(out.toByteArray(), CsvTable.MEDIA_TYPE, name + ".csv");
    }
}
