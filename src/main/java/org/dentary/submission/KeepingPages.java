package org.dentary.submission;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.UUID;
import org.dentary.custody.PieceService;
import org.dentary.platform.account.Act;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.specimen.CutPiece;
import org.dentary.specimen.Preservation;
import org.dentary.specimen.SpecimenService;
import org.jboss.resteasy.reactive.RestForm;

/** How tissue at the packing bench is kept from now on: another way, or in part another way as a piece of its own. */
@Path("/submissions")
@Produces(MediaType.TEXT_HTML)
public class KeepingPages {
    private final BenchPage bench;
    private final SpecimenService specimens;
    private final PieceService pieces;
    private final Clock clock;

    KeepingPages(BenchPage bench, SpecimenService specimens, PieceService pieces, Clock clock) {
        this.bench = bench;
        this.specimens = specimens;
        this.pieces = pieces;
        this.clock = clock;
    }

    /** Tissue that is kept differently from now on, such as chilled nodes put into the freezer. */
    @POST
    @Path("{id}/keeping")
    @PermissionsAllowed(Act.SUBMISSION_WRITE)
    public Response keep(
            @PathParam("id") UUID id,
            @RestForm String keptCode,
            @RestForm String preservation,
            @RestForm String keptReason) {
        return bench.answer(id, Bench.keeping(keptCode, keptReason), () -> {
            required("keptCode", keptCode, "Scan the code on the tube");
            required("keptReason", keptReason, "Say why it is kept differently");
            specimens.keep(keptCode, preservation("preservation", preservation), now(), keptReason.strip());
            return "";
        });
    }

    /** A piece cut from a tube now, such as half of a node put into formalin, under a spare label of its kit. */
    @POST
    @Path("{id}/pieces")
    @PermissionsAllowed(Act.SUBMISSION_WRITE)
    public Response cut(
            @PathParam("id") UUID id,
            @RestForm String pieceOf,
            @RestForm String pieceCode,
            @RestForm String pieceKept,
            @RestForm String pieceReason) {
        return bench.answer(id, Bench.cutting(new Bench.Piece(pieceOf, pieceCode, pieceKept, pieceReason)), () -> {
            required("pieceOf", pieceOf, "Scan the code on the tube that it is cut from");
            required("pieceCode", pieceCode, "Scan a spare label of the same kit, put on the piece");
            PieceService.Cut cut = pieces.cut(
                    pieceOf,
                    pieceCode,
                    CutPiece.now(
                            preservation("pieceKept", pieceKept),
                            now(),
                            pieceReason == null || pieceReason.isBlank() ? null : pieceReason.strip()));
            return "?cut=" + cut.code();
        });
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }

    private static void required(String field, String typed, String words) {
        if (typed == null || typed.isBlank()) {
            throw InvalidInput.field(field, "REQUIRED", words);
        }
    }

    private static Preservation preservation(String field, String chosen) {
        return Arrays.stream(Preservation.values())
                .filter(one -> one.name().equals(chosen))
                .findFirst()
                .orElseThrow(() -> InvalidInput.field(
                        field,
                        "NOT_ALLOWED",
                        "\"" + chosen + "\" is none of " + Arrays.toString(Preservation.values())));
    }
}
