package org.dentary.prevalence.linelist;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import jakarta.ws.rs.core.UriInfo;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.database.Snapshot;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.table.CsvTable;
import org.dentary.platform.table.ItemList;
import org.dentary.platform.table.Page;
import org.dentary.prevalence.cut.DataCutQueries;
import org.dentary.prevalence.cut.DataCutView;
import org.dentary.prevalence.cut.Superseded;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.ParameterIn;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;

/** The line list: JSON by pages, CSV as one stream. */
@Path("/api/v1")
@PermissionsAllowed(Act.REPORT_READ)
public class LineListResource {
    static final int PAGE = 100;
    private static final int LARGEST_PAGE = 1_000;

    private final LineListQueries queries;
    private final DataCutQueries cuts;
    private final Snapshot snapshot;
    private final LineFilters filters;

    LineListResource(LineListQueries queries, DataCutQueries cuts, Snapshot snapshot, LineFilters filters) {
        this.queries = queries;
        this.cuts = cuts;
        this.snapshot = snapshot;
        this.filters = filters;
    }

    /** What a request for lines asks: a filter, a cut, where to go on, how many. */
    record Asked(LineFilter filter, UUID cut, String afterKit, String afterDisease, int limit) {}

    @GET
    @Path("line-list")
    @Produces({MediaType.APPLICATION_JSON, "text/csv"})
    @Operation(
            summary = "The line list by pages",
            description =
                    "Every column filters by its name, and diedOnFrom and diedOnTo by a span of days; after and limit page; Link"
                            + " names the next page (RFC 8288).")
    @Parameter(name = "season", in = ParameterIn.QUERY, example = "2026")
    @Parameter(name = "diedOnFrom", in = ParameterIn.QUERY, description = "first day of death", example = "2026-11-01")
    @Parameter(name = "diedOnTo", in = ParameterIn.QUERY, description = "last day of death", example = "2026-11-30")
    @Parameter(name = "cut", in = ParameterIn.QUERY, description = "id of a data cut")
    public Response lines(@Context UriInfo address, @Context HttpHeaders headers) {
        if (CsvTable.isAsked(headers)) {
            return csv(address);
        }
        Asked asked = asked(address.getQueryParameters());
        List<LineView> lines = snapshot.read(() ->
                queries.page(asked.filter(), asked.cut(), asked.afterKit(), asked.afterDisease(), asked.limit() + 1));
        Page<LineView> page = Page.of(lines, asked.limit());
        return Page.linked(
                        superseded(Response.ok(new ItemList<>(page.items())), asked),
                        address,
                        "after",
                        page.next(last -> last.kit() + "." + last.disease()))
                .build();
    }

    @GET
    @Path("line-list.csv")
    @Produces("text/csv")
    public Response csv(@Context UriInfo address) {
        Asked asked = asked(address.getQueryParameters());
        StreamingOutput body = out -> {
            try (CsvTable csv = CsvTable.on(out, LineColumn.fields())) {
                snapshot.<Object[]>stream(
                        () -> queries.lines(asked.filter(), asked.cut(), null, null), row -> csv.row(row));
            }
        };
        return superseded(Response.ok(body, CsvTable.MEDIA_TYPE), asked)
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"line-list.csv\"")
                .build();
    }

    private Response.ResponseBuilder superseded(Response.ResponseBuilder response, Asked asked) {
        return Superseded.on(
                response, asked.cut() == null ? null : cuts.require(asked.cut()).supersededReason());
    }

    /** Reads and checks the parameters of a request for lines. */
    Asked asked(Map<String, List<String>> parameters) {
        Map<String, List<String>> rest = new LinkedHashMap<>(parameters);
        String after = first(rest.remove("after"));
        String limit = first(rest.remove("limit"));
        String cut = first(rest.remove("cut"));
        UUID id = cut == null ? null : cutId(cut);
        String[] at = after == null ? new String[] {null, null} : after.split("\\.", 2);
        if (at.length != 2) {
            throw InvalidInput.field("after", "NOT_A_PLACE", "'" + after + "' is not a place in the list; follow Link");
        }
        LineFilter filter = LineFilter.of(rest);
        filters.check(filter);
        if (id != null) {
            refuseOtherSeason(cuts.require(id), filter.values().getOrDefault(LineColumn.SEASON, List.of()));
        }
        return new Asked(filter, id, at[0], at[1], limit(limit));
    }

    /** A cut holds one season's lines: of another it would tell nothing, which is not that there are none. */
    private static void refuseOtherSeason(DataCutView cut, List<String> seasons) {
        if (!seasons.isEmpty() && !seasons.contains(cut.season())) {
            throw InvalidInput.field(
                    "cut",
                    "CUT_OF_ANOTHER_SEASON",
                    "cut '" + cut.name() + "' is of season " + cut.season() + ", not " + String.join(", ", seasons)
                            + "; choose a cut of that season, or leave one of the two out");
        }
    }

    private static UUID cutId(String given) {
        try {
            return UUID.fromString(given);
        } catch (IllegalArgumentException e) {
            throw InvalidInput.field("cut", "NOT_A_UUID", "'" + given + "' is not the id of a data cut");
        }
    }

    private static int limit(String given) {
        if (given == null) {
            return PAGE;
        }
        try {
            int limit = Integer.parseInt(given);
            if (limit >= 1 && limit <= LARGEST_PAGE) {
                return limit;
            }
        } catch (NumberFormatException e) {
            // told below, together with numbers out of range
        }
        throw InvalidInput.field(
                "limit", "OUT_OF_RANGE", "'" + given + "' is not a page size; allowed: 1 to " + LARGEST_PAGE);
    }

    private static String first(List<String> values) {
        return values == null || values.isEmpty() || values.get(0).isBlank()
                ? null
                : values.get(0).trim();
    }
}
