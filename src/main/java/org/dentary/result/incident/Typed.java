package org.dentary.result.incident;

import io.quarkus.qute.TemplateData;
import java.util.Map;

/**
 * What was typed into one of the page's forms when it was refused, so that nobody types it twice.
 *
 * @param form the step, the place in the telling order, or {@code closing}
 * @param fields what stood in its fields
 */
@TemplateData
public record Typed(String form, Map<String, String> fields) {
    static final Typed NOTHING = new Typed("", Map.of());

    /** Whether it is this form that was refused. */
    public boolean into(Object name) {
        return form.equals(name.toString());
    }

    /** What the form's field shows: what was typed, else what is kept, else nothing. */
    public String or(Object name, String field, Object kept) {
        String shown = into(name) ? fields.get(field) : null;
        return shown != null ? shown : kept == null ? "" : kept.toString();
    }
}
