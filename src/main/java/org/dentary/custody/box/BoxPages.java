package org.dentary.custody.box;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Instant;
import java.util.List;
import org.dentary.codes.LabelCode;
import org.dentary.codes.NotACode;
import org.dentary.custody.CustodyService;
import org.dentary.custody.CustodyView;
import org.dentary.custody.chain.Answers.Mark;
import org.dentary.custody.desk.HandOverForm;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.ETags;
import org.dentary.platform.table.Page;
import org.jboss.resteasy.reactive.RestForm;

/** A box as a page: where it is and who has it, what is in it, filled and emptied one scan at a time. */
@Path("/boxes")
@Produces(MediaType.TEXT_HTML)
public class BoxPages {
    private static final int MOVEMENTS = 50;

    private final BoxService boxes;
    private final CustodyService custody;
    private final MovementQueries movements;

    BoxPages(BoxService boxes, CustodyService custody, MovementQueries movements) {
        this.boxes = boxes;
        this.custody = custody;
        this.movements = movements;
    }

    /**
     * What was typed and what came of it.
     *
     * @param out whether scans take out rather than put in
     * @param code the last scan that was refused, or null
     * @param place as typed, or null
     * @param done the last scan that was taken, or null
     */
    record Typed(boolean out, String code, String place, String done) {}

    @CheckedTemplate(basePath = "custody")
    static class Templates {
        static native TemplateInstance box(
                BoxView box,
                CustodyView chain,
                List<Movement> movements,
                String first,
                String next,
                Typed typed,
                Faults faults);

        static native TemplateInstance unopened(String code, Typed typed, Faults faults);
    }

    @GET
    @Path("{code}")
    @PermissionsAllowed(Act.ANIMAL_READ)
    public TemplateInstance page(
            @PathParam("code") String code,
            @QueryParam("do") String what,
            @QueryParam("done") String done,
            @QueryParam("moved") String moved) {
        Mark after = Mark.read("moved", moved, Instant::parse);
        return page(code, after, new Typed("out".equals(what), null, null, known(done)), Faults.NONE);
    }

    /** Opens the box where it is, or moves it there with all that is in it. */
    @POST
    @Path("{code}")
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    public Response put(
            @PathParam("code") String code, @RestForm String place, @RestForm String reason, @RestForm String version) {
        return answer(code, new Typed(false, null, place, null), null, () -> {
            if (place == null || place.isBlank()) {
                throw InvalidInput.field("place", "REQUIRED", "Say where it is: a station, a store or words");
            }
            String seen = version == null || version.isBlank() ? null : ETags.of(HandOverForm.version(version));
            boxes.put(code, new PutBox(place.strip(), null, null, reason), seen);
        });
    }

    /** Puts what was scanned into the box, or takes it out. */
    @POST
    @Path("{code}/contents")
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    public Response scan(@PathParam("code") String code, @RestForm String content, @RestForm("do") String what) {
        boolean out = "out".equals(what);
        if (!out && !"in".equals(what)) {
            throw InvalidInput.field(
                    "do",
                    "INVALID_VALUE",
                    what == null
                            ? "say whether the scan goes in or comes out: do is in or out"
                            : "'" + what + "' is not allowed here; do is in or out");
        }
        return answer(code, new Typed(out, content, null, null), content, () -> {
            if (content == null || content.isBlank()) {
                throw InvalidInput.field("content", "REQUIRED", "Scan what goes " + (out ? "out" : "in"));
            }
            if (out) {
                requireInside(code, content);
                boxes.takeOut(code, content, Packing.NOW);
            } else {
                boxes.putIn(code, List.of(content), Packing.NOW);
            }
        });
    }

    /** The service leaves what is not in the box where it is; who scans it is told. */
    private void requireInside(String code, String content) {
        String plain = known(content);
        BoxView box = boxes.view(code);
        boolean inside = plain == null
                || box.contents().stream()
                        .anyMatch(one -> one.depth() == 1 && one.code().equals(plain));
        if (!inside) {
            throw InvalidInput.field("content", "NOT_IN_BOX", plain + " does not lie in this box; scan the next one");
        }
    }

    private Response answer(String code, Typed typed, String scanned, Runnable act) {
        try {
            act.run();
            String mode = typed.out() ? "?do=out" : "?do=in";
            String done = known(scanned) == null ? "" : mode + "&done=" + known(scanned);
            return Response.seeOther(
                            URI.create("/boxes/" + LabelCode.parse(code).value() + done))
                    .build();
        } catch (DomainException fault) {
            return Response.status(fault.status())
                    .entity(page(
                            code, null, typed, fault instanceof RuleBroken ? Faults.ofRule(fault) : Faults.of(fault)))
                    .build();
        }
    }

    private TemplateInstance page(String code, Mark after, Typed typed, Faults faults) {
        try {
            BoxView box = boxes.view(code);
            Page<Movement> page = Page.of(movements.of(box.code(), after, MOVEMENTS + 1), MOVEMENTS);
            String address = "/boxes/" + box.code();
            Mark next = page.next(Movement::mark);
            return Templates.box(
                    box,
                    custody.chain(box.code()),
                    page.items(),
                    after == null ? null : address + "#moved",
                    next == null ? null : address + "?moved=" + next + "#moved",
                    typed,
                    faults);
        } catch (NotFound fault) {
            if (fault.code().equals("BOX_UNKNOWN")) {
                return Templates.unopened(LabelCode.parse(code).value(), typed, faults);
            }
            throw fault;
        }
    }

    private static String known(String scanned) {
        try {
            return scanned == null ? null : LabelCode.parse(scanned).value();
        } catch (NotACode fault) {
            return null;
        }
    }
}
