package org.dentary.calculators;

import io.quarkus.arc.All;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.dentary.calculators.Answer.Figures;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.table.CsvTable;
import org.dentary.statistics.OutOfDomain;

/** The roof over the calculators, a page for each, its drawing and its tables; what is asked stands in the address. */
@Path("/calculators")
@PermissionsAllowed(Act.READ_COMMON)
public class CalculatorPages {
    private final List<Calculator> calculators;

    CalculatorPages(@All List<Calculator> calculators) {
        this.calculators = calculators.stream()
                .sorted(Comparator.comparingInt(calculator -> calculator.entry().place()))
                .toList();
    }

    @CheckedTemplate(basePath = "calculators")
    static class Templates {
        static native TemplateInstance roof(List<RoofPart> parts);

        static native TemplateInstance calculator(CalculatorPage page);
    }

    /** The calculators of one part of the roof. */
    record RoofPart(String words, List<Calculator.Entry> entries) {}

    @GET
    @Produces(MediaType.TEXT_HTML)
    public TemplateInstance roof() {
        return Templates.roof(Arrays.stream(Calculator.Part.values())
                .map(part -> new RoofPart(
                        part.words(),
                        calculators.stream()
                                .map(Calculator::entry)
                                .filter(entry -> entry.part() == part)
                                .toList()))
                .toList());
    }

    /** An empty form where nothing is asked; the answer, or with 422 what is wrong, where something is. */
    @GET
    @Path("{name: [a-z-]+}")
    @Produces(MediaType.TEXT_HTML)
    public Response page(@PathParam("name") String name, @Context UriInfo address) {
        Calculator calculator = find(name);
        if (address.getQueryParameters().isEmpty()) {
            return Response.ok(Templates.calculator(CalculatorPage.empty(calculator)))
                    .build();
        }
        try {
            Answer answer = calculator.answer(Asked.of(address));
            return Response.ok(Templates.calculator(CalculatorPage.answered(calculator, address, answer)))
                    .build();
        } catch (DomainException refusal) {
            return refused(calculator, address, Faults.of(refusal));
        } catch (OutOfDomain refusal) {
            return refused(calculator, address, new Faults(List.of(OutOfDomainMapper.problem(refusal))));
        }
    }

    /** The answer's drawing; {@code narrow=true} for a phone. */
    @GET
    @Path("{name: [a-z-]+}.svg")
    @Produces("image/svg+xml")
    public String drawing(
            @PathParam("name") String name,
            @QueryParam("narrow") @DefaultValue("false") boolean narrow,
            @Context UriInfo address) {
        return CalculatorCharts.svg(find(name).answer(Asked.of(address)).drawing(), narrow);
    }

    /** One of the answer's tables, counted from 1. */
    @GET
    @Path("{name: [a-z-]+}.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    public byte[] table(
            @PathParam("name") String name,
            @QueryParam("table") @DefaultValue("1") int table,
            @Context UriInfo address) {
        List<Figures> tables = find(name).answer(Asked.of(address)).tables();
        if (table < 1 || table > tables.size()) {
            throw new NotFound("TABLE_UNKNOWN", "There are " + tables.size() + " tables, counted from 1, not " + table);
        }
        Figures figures = tables.get(table - 1);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (CsvTable csv = CsvTable.on(bytes, figures.columns())) {
            figures.rows().forEach(row -> csv.row(row.toArray()));
        }
        return bytes.toByteArray();
    }

    private static Response refused(Calculator calculator, UriInfo address, Faults faults) {
        return Response.status(422)
                .entity(Templates.calculator(CalculatorPage.refused(calculator, address, faults)))
                .build();
    }

    private Calculator find(String name) {
        return calculators.stream()
                .filter(calculator -> calculator.entry().name().equals(name))
                .findFirst()
                .orElseThrow(() -> new NotFound(
                        "CALCULATOR_UNKNOWN",
                        "There is no calculator '" + name + "'; see /calculators for those there are"));
    }
}
