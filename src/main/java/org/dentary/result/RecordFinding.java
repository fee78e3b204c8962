package org.dentary.result;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

/**
 * One finding entered by hand.
 *
 * @param specimens label codes; both nodes in one homogenate are one finding, several animals a pool
 * @param method test method code; it names the disease
 * @param accession the laboratory's number; one may cover many animals
 * @param item the laboratory's number within the accession, or null
 * @param laboratory that reports it
 * @param performingLaboratory that made the test where the report names another, or null
 * @param testedOn day of the test; null only where nothing was tested
 * @param reason coded; required for UNSUITABLE and NOT_TESTED
 * @param measuredValue as the laboratory wrote it
 * @param corrects the finding that this one replaces
 */
public record RecordFinding(
        @NotEmpty(message = "is required: the codes on the tubes tested")
        List<@NotBlank(message = "is empty; scan the tube's code") String> specimens,

        @NotBlank(message = "is required: a test method's code")
        String method,

        @NotNull(message = "is required: SCREENING, REPEAT, CONFIRMATORY or ADJUNCT")
        Stage stage,

        @NotNull(message = "is required: the test's word") FindingWord finding,

        @NotNull(message = "is required: PRELIMINARY, FINAL, CORRECTED or CANCELLED")
        FindingStatus status,

        @NotBlank(message = "is required: the laboratory's number")
        @Size(max = 80, message = "takes at most 80 characters")
        String accession,

        @Size(max = 80, message = "takes at most 80 characters")
        String item,

        @NotBlank(message = "is required: a laboratory's code")
        String laboratory,

        @Size(max = 40, message = "takes at most 40 characters: a laboratory's code")
        String performingLaboratory,

        LocalDate testedOn,

        @NotNull(message = "is required: the day of the report")
        LocalDate reportedOn,

        FindingReason reason,

        @Size(max = 200, message = "takes at most 200 characters")
        String measuredValue,

        UUID corrects) {}
