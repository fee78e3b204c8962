package org.dentary.setup;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.dentary.setup.list.SetUpList;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;

/** Files for the lists, in and out: what a list holds, an empty one, looking a file through, posting it. */
@Path("/season")
@Produces(MediaType.TEXT_HTML)
public class SetUpFilePages {
    private final SetUpImportService imports;

    SetUpFilePages(SetUpImportService imports) {
        this.imports = imports;
    }

    @CheckedTemplate(basePath = "setup")
    static class Templates {
        static native TemplateInstance list(SetUpList list, int rows, Faults faults);

        static native TemplateInstance preview(SetUpList list, SetUpImportView file, Faults faults);
    }

    /** What a list holds, its columns, and the way to send a file for it. */
    @GET
    @Path("lists/{list}")
    @PermissionsAllowed(Act.SET_UP)
    public TemplateInstance list(@PathParam("list") String path) {
        return page(SetUpList.of(path), Faults.NONE);
    }

    @GET
    @Path("lists/{list}/rows.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.SET_UP)
    public Response rows(@PathParam("list") String path) {
        SetUpList list = SetUpList.of(path);
        var rows = imports.rows(list);
        return csv(
                list.path() + ".csv",
                list.header(),
                rows.stream().map(row -> row.values().toArray()).toList());
    }

    @GET
    @Path("lists/{list}/empty.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.SET_UP)
    public Response empty(@PathParam("list") String path) {
        SetUpList list = SetUpList.of(path);
        return csv(list.path() + "-empty.csv", list.header(), List.of());
    }

    @POST
    @Path("lists/{list}/files")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @PermissionsAllowed(Act.SET_UP)
    public Response send(@PathParam("list") String path, @RestForm("file") FileUpload file) {
        SetUpList list = SetUpList.of(path);
        try {
            UUID id = UUID.randomUUID();
            imports.preview(id, path, bytes(file), null);
            return Response.seeOther(URI.create("/season/files/" + id)).build();
        } catch (DomainException refusal) {
            Faults faults = new Faults(List.of(new FieldProblem("file", refusal.code(), refusal.getMessage())));
            return Response.status(refusal.status()).entity(page(list, faults)).build();
        }
    }

    @GET
    @Path("files/{id}")
    @PermissionsAllowed(Act.SET_UP)
    public TemplateInstance preview(@PathParam("id") UUID id) {
        SetUpImportView file = imports.find(id);
        return Templates.preview(SetUpList.of(file.list()), file, Faults.NONE);
    }

    @GET
    @Path("files/{id}/problems.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.SET_UP)
    public Response problems(@PathParam("id") UUID id) {
        return csv(
                "problems.csv",
                List.of("line", "field", "rule", "message"),
                imports.find(id).problems().stream()
                        .map(problem ->
                                new Object[] {problem.line(), problem.field(), problem.rule(), problem.message()})
                        .toList());
    }

    @POST
    @Path("files/{id}/posting")
    @PermissionsAllowed(Act.SET_UP)
    public Response post(@PathParam("id") UUID id) {
        try {
            imports.post(id);
            return Response.seeOther(URI.create("/season/files/" + id)).build();
        } catch (DomainException refusal) {
            SetUpImportView file = imports.find(id);
            Faults faults = new Faults(List.of(new FieldProblem("", refusal.code(), refusal.getMessage())));
            return Response.status(refusal.status())
                    .entity(Templates.preview(SetUpList.of(file.list()), file, faults))
                    .build();
        }
    }

    private TemplateInstance page(SetUpList list, Faults faults) {
        return Templates.list(list, imports.counts().getOrDefault(list, 0), faults);
    }

    private static byte[] bytes(FileUpload file) {
        try {
            return file == null ? new byte[0] : Files.readAllBytes(file.uploadedFile());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Response csv(String name, List<String> header, List<Object[]> rows) {
        StreamingOutput body = out -> {
            try (CsvTable table = CsvTable.on(out, header)) {
                rows.forEach(table::row);
            }
        };
        return Reply.file(body, CsvTable.MEDIA_TYPE, name);
    }
}
