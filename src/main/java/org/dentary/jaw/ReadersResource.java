package org.dentary.jaw;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.util.List;
import java.util.Map;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.account.Role;
import org.dentary.platform.problem.NotAllowed;
import org.dentary.platform.table.CsvTable;

/** How a reader agrees with others and with known ages; a sampler reads only their own. */
@Path("/api/v1/readers")
public class ReadersResource {
    private final ReaderAgreementService agreements;
    private final CurrentAccount current;

    ReadersResource(ReaderAgreementService agreements, CurrentAccount current) {
        this.agreements = agreements;
        this.current = current;
    }

    @GET
    @Path("{person}/agreement")
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.READER_AGREEMENT)
    public Response agreement(@PathParam("person") String person, @QueryParam("season") String season) {
        return Response.ok(read(person, season))
                .header(HttpHeaders.CACHE_CONTROL, "private, no-store")
                .build();
    }

    /** The tables of counts, a line for each pair of classes. */
    @GET
    @Path("{person}/agreement.csv")
    @Produces("text/csv")
    @PermissionsAllowed(Act.READER_AGREEMENT)
    public Response table(@PathParam("person") String person, @QueryParam("season") String season) {
        ReaderAgreement agreement = read(person, season);
        StreamingOutput stream = out -> {
            try (CsvTable table = CsvTable.on(out, List.of("compared", "readerClass", "otherClass", "animals"))) {
                Map.of(
                                "DRAWN", agreement.drawn(),
                                "REFERRED", agreement.referred(),
                                "KNOWN_AGE", agreement.knownAge())
                        .entrySet()
                        .stream()
                        .sorted(Map.Entry.comparingByKey())
                        .forEach(each -> rows(table, each.getKey(), each.getValue(), agreement.classes()));
            }
        };
        return Response.ok(stream, CsvTable.MEDIA_TYPE)
                .header(HttpHeaders.CACHE_CONTROL, "private, no-store")
                .build();
    }

    private static void rows(CsvTable table, String compared, ReaderAgreement.Compared of, List<String> classes) {
        for (int i = 0; i < classes.size(); i++) {
            for (int j = 0; j < classes.size(); j++) {
                table.row(
                        compared,
                        classes.get(i),
                        classes.get(j),
                        of.counts().get(i).get(j));
            }
        }
    }

    private ReaderAgreement read(String person, String season) {
        Account account = current.get();
        if (account.role() == Role.SAMPLER && !person.equals(account.person())) {
            throw new NotAllowed("OTHER_READER", "A sampler reads only their own agreement");
        }
        return agreements.of(person, season == null || season.isBlank() ? null : season);
    }
}
