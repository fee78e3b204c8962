package org.dentary.calculators;

import io.quarkus.qute.TemplateData;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.FieldProblem;

/**
 * A calculator's page as it stands.
 *
 * @param fields what is asked, with what was typed
 * @param faults what is wrong with it
 * @param answer null when nothing was asked or something is wrong
 * @param query the address's query, to ask the same again
 * @param text the answer as plain text; empty without one
 */
@TemplateData
record CalculatorPage(
        Calculator.Entry entry, List<Typed> fields, Faults faults, Answer answer, String query, String text) {
    private static final Pattern ROW = Pattern.compile("(\\w+)\\[(\\d+)\\](.*)");

    /** A field with what stands in it. */
    @TemplateData
    record Typed(Field field, String value) {
        /** Whether an option is the one chosen. */
        public boolean chosen(String option) {
            return option.equals(value);
        }
    }

    static CalculatorPage empty(Calculator calculator) {
        return new CalculatorPage(
                calculator.entry(),
                calculator.fields().stream()
                        .map(field -> new Typed(field, field.preset()))
                        .toList(),
                Faults.NONE,
                null,
                "",
                "");
    }

    static CalculatorPage answered(Calculator calculator, UriInfo address, Answer answer) {
        String query = address.getRequestUri().getRawQuery();
        return new CalculatorPage(
                calculator.entry(),
                typed(calculator, address),
                Faults.NONE,
                answer,
                query,
                answer.asText(
                        calculator.entry().title(), address.getRequestUri().toString()));
    }

    static CalculatorPage refused(Calculator calculator, UriInfo address, Faults faults) {
        List<FieldProblem> told =
                faults.all().stream().map(fault -> told(calculator, fault)).toList();
        return new CalculatorPage(calculator.entry(), typed(calculator, address), new Faults(told), null, "", "");
    }

    private static List<Typed> typed(Calculator calculator, UriInfo address) {
        return calculator.fields().stream()
                .map(field -> {
                    String value = address.getQueryParameters().getFirst(field.name());
                    return new Typed(field, value == null ? "" : value);
                })
                .toList();
    }

    /** The same fault by the page's words: the field's label, and a row of a table by its number. */
    private static FieldProblem told(Calculator calculator, FieldProblem fault) {
        Matcher row = ROW.matcher(fault.field());
        String name = row.matches() ? row.group(1) : fault.field();
        String message = fault.message();
        if (row.matches()) {
            String where =
                    "row " + (Integer.parseInt(row.group(2)) + 1) + row.group(3).replace('.', ' ');
            message = message.replace(fault.field(), where);
        }
        for (Field field : calculator.fields()) {
            if (field.name().equals(name) && message.startsWith(name)) {
                message = field.label() + message.substring(name.length());
            }
        }
        return new FieldProblem(name, fault.rule(), message);
    }

    /** Address of the drawing of this answer. */
    public String drawing() {
        return "/calculators/" + entry.name() + ".svg?" + query;
    }

    /** The same for a phone. */
    public String narrowDrawing() {
        return "/calculators/" + entry.name() + ".svg?narrow=true&" + query;
    }

    /** Whether the fields stand beside each other at a desk: not where one of them holds a table. */
    public boolean isShort() {
        return fields.stream().noneMatch(typed -> typed.field().isRows());
    }

    /** Address of a table of this answer, counted from 1. */
    public String table(int number) {
        return "/calculators/" + entry.name() + ".csv?table=" + number + "&" + query;
    }
}
