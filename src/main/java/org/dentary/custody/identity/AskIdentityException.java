package org.dentary.custody.identity;

import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/**
 * Vouches for a specimen whose label does not match.
 *
 * @param code the code under which it is to be tested
 * @param problemText what is wrong in words; needed where the problem is OTHER
 * @param discrepancy the discrepancy that told of it, or left out
 * @param irreplaceable why it cannot be collected again
 * @param evidence what shows whose it is: what was compared, who saw it
 * @param photos ids of photographs that show it, kept before, or left out
 * @param password of the account that signs; it is checked and kept nowhere
 */
public record AskIdentityException(
        @NotBlank(message = "scan or type the code under which the specimen is to be tested")
        String code,

        @NotNull(
                message =
                        "say what is wrong with the label: UNLABELED, LABEL_DISAGREES_WITH_LIST, LABEL_ILLEGIBLE, WRONG_ID or OTHER")
        LabelProblem problem,

        @Size(max = 2000, message = "what is wrong has up to 2000 characters")
        String problemText,

        UUID discrepancy,

        @NotBlank(message = "say why it cannot be collected again, such as: the hunter has left with the carcass")
        @Size(max = 2000, message = "why it cannot be collected again has up to 2000 characters")
        String irreplaceable,

        @NotBlank(message = "say what shows whose it is, such as: the only jar of that box without a label")
        @Size(max = 2000, message = "evidence has up to 2000 characters")
        String evidence,

        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<UUID> photos,

        @Schema(writeOnly = true) @NotBlank(message = "sign with the password of your own account")
        String password) {

    /** The same without the password, as it is compared with what was sent before. */
    AskIdentityException unsigned(String parsed) {
        return new AskIdentityException(
                parsed, problem, problemText, discrepancy, irreplaceable, evidence, photos, null);
    }
}
