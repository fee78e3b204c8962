package org.dentary.jaw.agreement;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.util.List;
import java.util.function.Consumer;
import org.dentary.jaw.agreement.ReaderAgreement.Group;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.dentary.platform.table.ItemList;
import org.dentary.statistics.agreement.Agreement;

/** How readers agree with each other, the panel and known ages; a sampler reads only their own. */
@Path("/api/v1/readers")
public class ReadersResource {
    private static final List<String> FIGURES = List.of(
            "animals",
            "exact",
            "withinOne",
            "bias",
            "kappa",
            "kappaError",
            "linearKappa",
            "linearKappaError",
            "quadraticKappa",
            "quadraticKappaError");

    private final ReaderAgreementService agreements;
    private final CurrentAccount current;

    ReadersResource(ReaderAgreementService agreements, CurrentAccount current) {
        this.agreements = agreements;
        this.current = current;
    }

    /** Everyone who has read a jaw, by code. */
    @GET
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.READER_AGREEMENT)
    public Response all() {
        return Reply.ok(new ItemList<>(agreements.all(current.get())));
    }

    /** The same, a line for each reader and group that has a jaw. */
    @GET
    @Path("readers.csv")
    @Produces("text/csv")
    @PermissionsAllowed(Act.READER_AGREEMENT)
    public Response allAsTable() {
        List<ReaderSummary> readers = agreements.all(current.get());
        return csv(
                "readers.csv",
                List.of("person", "name", "readings", "compared"),
                FIGURES,
                table -> readers.forEach(reader -> {
                    line(table, reader.drawn(), reader.person(), reader.name(), reader.readings(), Group.DRAWN);
                    line(table, reader.panel(), reader.person(), reader.name(), reader.readings(), Group.PANEL);
                    line(table, reader.knownAge(), reader.person(), reader.name(), reader.readings(), Group.KNOWN_AGE);
                }));
    }

    /**
     * How one reader agrees.
     *
     * @param season season code; every season when left out
     */
    @GET
    @Path("{person}/agreement")
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.READER_AGREEMENT)
    public Response agreement(@PathParam("person") String person, @QueryParam("season") String season) {
        return Reply.ok(agreements.of(current.get(), person, blank(season)));
    }

    /** The tables of counts, a line for each pair of classes. */
    @GET
    @Path("{person}/agreement.csv")
    @Produces("text/csv")
    @PermissionsAllowed(Act.READER_AGREEMENT)
    public Response table(@PathParam("person") String person, @QueryParam("season") String season) {
        ReaderAgreement agreement = agreements.of(current.get(), person, blank(season));
        return csv(
                "agreement.csv",
                List.of("compared", "readerClass", "otherClass", "animals"),
                List.of(),
                table -> List.of(Group.values())
                        .forEach(group -> rows(table, group, agreement.of(group), agreement.classes())));
    }

    /** The figures, a line for each season and group that has a jaw; empty where a kappa is undefined. */
    @GET
    @Path("{person}/agreement-by-season.csv")
    @Produces("text/csv")
    @PermissionsAllowed(Act.READER_AGREEMENT)
    public Response seasons(@PathParam("person") String person) {
        ReaderAgreement agreement = agreements.of(current.get(), person, null);
        return csv(
                "agreement-by-season.csv",
                List.of("season", "compared"),
                FIGURES,
                table -> agreement
                        .seasons()
                        .forEach(line -> line(table, line.agreement(), line.season(), line.compared())));
    }

    private static void rows(CsvTable table, Group compared, ReaderAgreement.Compared of, List<String> classes) {
        for (int i = 0; i < classes.size(); i++) {
            for (int j = 0; j < classes.size(); j++) {
                table.row(
                        compared.name(),
                        classes.get(i),
                        classes.get(j),
                        of.counts().get(i).get(j));
            }
        }
    }

    private static void line(CsvTable table, Agreement of, Object... head) {
        if (of.animals() == 0) {
            return;
        }
        Object[] figures = {
            of.animals(),
            rounded(of.exact()),
            rounded(of.withinOne()),
            rounded(of.bias()),
            rounded(of.kappa().estimate()),
            rounded(of.kappa().standardError()),
            rounded(of.linear().estimate()),
            rounded(of.linear().standardError()),
            rounded(of.quadratic().estimate()),
            rounded(of.quadratic().standardError())
        };
        Object[] row = new Object[head.length + figures.length];
        System.arraycopy(head, 0, row, 0, head.length);
        System.arraycopy(figures, 0, row, head.length, figures.length);
        table.row(row);
    }

    private static Double rounded(Double figure) {
        return figure == null ? null : Double.valueOf(Math.round(figure * 1e6) / 1e6);
    }

    private static Response csv(String name, List<String> head, List<String> more, Consumer<CsvTable> rows) {
        List<String> columns =
                java.util.stream.Stream.concat(head.stream(), more.stream()).toList();
        StreamingOutput stream = out -> {
            try (CsvTable table = CsvTable.on(out, columns)) {
                rows.accept(table);
            }
        };
        return Reply.file(stream, CsvTable.MEDIA_TYPE, name);
    }

    private static String blank(String typed) {
        return typed == null || typed.isBlank() ? null : typed.trim();
    }
}
