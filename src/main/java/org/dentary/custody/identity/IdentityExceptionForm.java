package org.dentary.custody.identity;

import jakarta.ws.rs.FormParam;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.problem.InvalidInput;

/** What was typed to vouch for a specimen; every field may be null or blank. The password is never shown again. */
public class IdentityExceptionForm {
    @FormParam("key")
    public String key;

    @FormParam("code")
    public String code;

    @FormParam("discrepancy")
    public String discrepancy;

    @FormParam("problem")
    public String problem;

    @FormParam("problemText")
    public String problemText;

    @FormParam("irreplaceable")
    public String irreplaceable;

    @FormParam("evidence")
    public String evidence;

    @FormParam("photos")
    public List<String> photos;

    @FormParam("password")
    public String password;

    /** An empty form, about a code and a discrepancy where the page before named them. */
    static IdentityExceptionForm fresh(String code, String discrepancy) {
        IdentityExceptionForm form = new IdentityExceptionForm();
        form.key = UUID.randomUUID().toString();
        form.code = code;
        form.discrepancy = discrepancy;
        return form;
    }

    UUID id() {
        return uuid(key, "key");
    }

    /** Ids of the photographs kept so far, in the order taken; never null. */
    public List<String> getPhotoIds() {
        return photos == null ? List.of() : List.copyOf(photos);
    }

    void addPhoto(UUID id) {
        List<String> all = new ArrayList<>(getPhotoIds());
        if (!all.contains(id.toString())) {
            all.add(id.toString());
        }
        photos = all;
    }

    AskIdentityException command() {
        return new AskIdentityException(
                said(code),
                problem(),
                said(problemText),
                said(discrepancy) == null ? null : uuid(said(discrepancy), "discrepancy"),
                said(irreplaceable),
                said(evidence),
                getPhotoIds().stream().map(id -> uuid(id, "photos")).toList(),
                password == null || password.isEmpty() ? null : password);
    }

    private LabelProblem problem() {
        try {
            return said(problem) == null ? null : LabelProblem.valueOf(said(problem));
        } catch (IllegalArgumentException fault) {
            throw InvalidInput.field("problem", "INVALID_VALUE", "'" + problem + "' is not on the list; choose one");
        }
    }

    private static String said(String typed) {
        return typed == null || typed.isBlank() ? null : typed.strip();
    }

    private static UUID uuid(String typed, String field) {
        try {
            return UUID.fromString(typed == null ? "" : typed);
        } catch (IllegalArgumentException fault) {
            throw InvalidInput.field(field, "INVALID_VALUE", "The form was damaged; load the page again");
        }
    }
}
