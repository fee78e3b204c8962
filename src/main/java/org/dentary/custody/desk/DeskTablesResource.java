package org.dentary.custody.desk;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.function.Consumer;
import org.dentary.custody.chain.Answers;
import org.dentary.custody.discrepancy.DiscrepancyView;
import org.dentary.custody.discrepancy.DiscrepancyViews;
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
    private final OpenOffers offers;
    private final HoldingsQueries holdings;
    private final DiscrepancyViews discrepancies;
    private final IdentityExceptionViews identities;

    DeskTablesResource(
            OpenOffers offers,
            HoldingsQueries holdings,
            DiscrepancyViews discrepancies,
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
                "holdings", List.of("code", "part", "custodian", "box", "place", "collected_at", "offered"), csv -> {
                    Answers.whole(
                            (after, most) -> holdings.inHand(acting, after, most), Held::mark, one -> row(csv, one));
                    Answers.whole(
                            (after, most) -> holdings.inStores(acting, after, most), Held::mark, one -> row(csv, one));
                });
    }

    private static void row(CsvTable csv, Held one) {
        csv.row(
                one.code(),
                one.part(),
                one.custodian(),
                one.box(),
                one.place(),
                one.collectedAt()
                        .truncatedTo(ChronoUnit.SECONDS)
                        .atZone(ZoneId.of(one.zone()))
                        .toOffsetDateTime(),
                one.offered());
    }

    @GET
    @Path("offers.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    @Operation(summary = "Open hand-overs to me and by me, the longest waiting first, as CSV")
    public Response offers() {
        ActingFor acting = offers.acting();
        return table(
                "offers",
                List.of("hand_over", "direction", "from", "to", "place", "occurred_at", "codes", "overdue"),
                csv -> {
                    Answers.whole(
                            (after, most) -> offers.toMe(acting, after, most),
                            OpenOffers::mark,
                            one -> row(csv, "TO_ME", one));
                    Answers.whole(
                            (after, most) -> offers.fromMe(acting, after, most),
                            OpenOffers::mark,
                            one -> row(csv, "BY_ME", one));
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
        Consumer<Consumer<DiscrepancyView>> mine = discrepancies.allOfMine(all ? null : true);
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
                csv -> mine.accept(one -> csv.row(
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
                csv -> identities.all(one -> csv.row(
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
        StreamingOutput body = out -> {
            try (CsvTable csv = CsvTable.on(out, columns)) {
                rows.accept(csv);
            }
        };
        return Reply.file(body, CsvTable.MEDIA_TYPE, name + ".csv");
    }
}
