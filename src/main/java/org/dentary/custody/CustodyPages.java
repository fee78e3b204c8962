package org.dentary.custody;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.jboss.resteasy.reactive.RestForm;

/** Custody as a page: what I hold, what is offered, and the hand-over itself. What is done on a page is done now. */
@Path("/custody")
@Produces(MediaType.TEXT_HTML)
public class CustodyPages {
    private static final int MOST = 500;

    private final HandOverService handOvers;
    private final DiscrepancyService discrepancies;
    private final HoldingsQueries holdings;
    private final CurrentAccount account;
    private final Clock clock;

    CustodyPages(
            HandOverService handOvers,
            DiscrepancyService discrepancies,
            HoldingsQueries holdings,
            CurrentAccount account,
            Clock clock) {
        this.handOvers = handOvers;
        this.discrepancies = discrepancies;
        this.holdings = holdings;
        this.account = account;
        this.clock = clock;
    }

    /** What was typed, and for which offer, null for a new one; every field may be null. */
    record Typed(UUID offer, String codes, String to, String place, String reason) {
        static final Typed EMPTY = new Typed(null, null, null, null, null);

        /** The codes counted for that offer, so that a fault loses no scan; empty until somebody counts. */
        public String countedFor(UUID id) {
            return id.equals(offer) && codes != null ? codes : "";
        }

        public String reasonFor(UUID id) {
            return id.equals(offer) && reason != null ? reason : "";
        }

        public String offered() {
            return offer == null && codes != null ? codes : "";
        }
    }

    @CheckedTemplate(basePath = "custody")
    static class Templates {
        static native TemplateInstance custody(
                List<HoldingsQueries.Held> held,
                List<HandOverView> toMe,
                List<HandOverView> fromMe,
                List<DiscrepancyView> discrepancies,
                Typed typed,
                Faults faults);
    }

    @GET
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    public TemplateInstance page() {
        return page(Typed.EMPTY, Faults.NONE);
    }

    private TemplateInstance page(Typed typed, Faults faults) {
        String me = account.get().actor();
        List<HandOverView> open = handOvers.list("OFFERED", null, null, MOST);
        return Templates.custody(
                holdings.of(me, MOST),
                open.stream().filter(h -> h.to().equals(me)).toList(),
                open.stream().filter(h -> h.from().equals(me)).toList(),
                discrepancies.list(true, null, null, null, MOST),
                typed,
                faults);
    }

    @POST
    @Path("hand-overs")
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    public Response offer(@RestForm String codes, @RestForm String to, @RestForm String place) {
        return answer(new Typed(null, codes, to, place, null), () -> {
            if (to == null || to.isBlank()) {
                throw InvalidInput.field("to", "REQUIRED", "Say who takes it over");
            }
            handOvers.offer(
                    UUID.randomUUID(),
                    new OfferHandOver(lines(codes), to.strip(), empty(place), now(), null, null, null, null, null),
                    null);
        });
    }

    @POST
    @Path("hand-overs/{id}/acceptance")
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    public Response accept(@PathParam("id") UUID id, @RestForm String codes) {
        return answer(
                new Typed(id, codes, null, null, null),
                () -> handOvers.accept(id, new AcceptHandOver(lines(codes), now(), null, null)));
    }

    @POST
    @Path("hand-overs/{id}/refusal")
    @PermissionsAllowed(Act.CUSTODY_WRITE)
    public Response refuse(@PathParam("id") UUID id, @RestForm String reason) {
        return answer(new Typed(id, null, null, null, reason), () -> {
            if (reason == null || reason.isBlank()) {
                throw InvalidInput.field("reason", "REQUIRED", "Say why you do not take it");
            }
            List<String> all = handOvers.view(id).items().stream()
                    .map(HandOverView.Item::code)
                    .toList();
            handOvers.refuse(id, new RefuseHandOver(all, reason.strip(), now(), null));
        });
    }

    private Response answer(Typed typed, Runnable act) {
        try {
            act.run();
            return Response.seeOther(URI.create("/custody")).build();
        } catch (DomainException fault) {
            return Response.status(fault.status())
                    .entity(page(typed, Faults.of(fault)))
                    .build();
        }
    }

    private static List<String> lines(String codes) {
        List<String> lines = codes == null
                ? List.of()
                : Arrays.stream(codes.split("[\\s,;]+"))
                        .filter(c -> !c.isBlank())
                        .toList();
        if (lines.isEmpty()) {
            throw InvalidInput.field("codes", "REQUIRED", "Scan at least one code");
        }
        return lines;
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }

    private static String empty(String text) {
        return text == null || text.isBlank() ? null : text.strip();
    }
}
