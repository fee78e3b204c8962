package org.dentary.intake;

import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.PositiveOrZero;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import org.dentary.animal.AnimalDetails;
import org.dentary.animal.AnimalFacts;
import org.dentary.animal.Antlers;
import org.dentary.animal.ClinicalSigns;
import org.dentary.animal.CollectionRoute;
import org.dentary.animal.DiedOnPrecision;
import org.dentary.animal.Identifier;
import org.dentary.animal.JawStatus;
import org.dentary.animal.MortalitySource;
import org.dentary.animal.Origin;
import org.dentary.animal.SamplingBasis;
import org.dentary.animal.Sex;
import org.dentary.animal.SexEvidence;
import org.dentary.animal.vault.Contact;
import org.dentary.animal.vault.ExactPoint;
import org.dentary.jaw.ReadJaw;
import org.dentary.specimen.TakeSpecimen;

/**
 * One animal as taken in; also a correction of its facts, then with a reason.
 *
 * @param origin {@code WILD} when left out
 * @param sexEvidence {@code UNKNOWN} when left out
 * @param diedOn a day, or a time with offset, which counts as the day it was at the station
 * @param diedOnPrecision {@code DAY} when left out
 * @param managementUnit a unit's code or {@code UNKNOWN}
 * @param clinicalSigns {@code NOT_OBSERVED} when left out
 * @param jawStatus may be left out beside a reading
 * @param specimens whatever was taken already; more may follow
 * @param contact whom to tell; kept encrypted, and left out when requests are compared
 * @param point where exactly it died or was found; kept encrypted
 * @param enteredAt when it was entered on the device
 * @param reason why it is changed, or why it was entered in error
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record TakeInAnimal(
        @NotBlank(message = "name the species, such as WHITE_TAILED_DEER")
        String species,

        Origin origin,

        @NotNull(message = "say MALE, FEMALE or UNKNOWN") Sex sex,

        SexEvidence sexEvidence,
        String diedOn,
        DiedOnPrecision diedOnPrecision,
        @Size(max = 500) String diedOnReason,

        @NotBlank(message = "give the management unit's code, or UNKNOWN")
        String managementUnit,

        @NotBlank(message = "name the station that takes the animal in")
        String station,

        @NotNull(message = "say how the animal died, such as HUNTER_HARVEST or VEHICLE, or UNKNOWN")
        MortalitySource mortalitySource,

        @NotNull(message = "say how the animal reached you: STATION, DROP_OFF, PROCESSOR, TAXIDERMIST, FIELD or OTHER")
        CollectionRoute collectionRoute,

        ClinicalSigns clinicalSigns,

        @NotNull(message = "say why it is sampled: MANDATORY, VOLUNTARY, QUOTA, HUNTER_REQUESTED or TARGETED")
        SamplingBasis samplingBasis,

        JawStatus jawStatus,
        @Size(max = 500) String jawReason,
        @Valid ReadJaw jawReading,

        @Size(max = 40, message = "at most 40 specimens of one animal")
        List<@NotNull @Valid TakeSpecimen> specimens,

        @Size(max = 20, message = "at most 20 identifiers") List<@NotNull @Valid Identifier> identifiers,
        Antlers antlers,
        @PositiveOrZero @Max(60) Integer antlerPoints,

        @Min(value = 1, message = "a field-dressed mass is 1 to 250 kilograms")
        @Max(value = 250, message = "a field-dressed mass is 1 to 250 kilograms")
        BigDecimal fieldDressedKilograms,

        Boolean lactating,

        @Min(value = 1, message = "a fetus is 1 to 600 millimeters long")
        @Max(value = 600, message = "a fetus is 1 to 600 millimeters long")
        Integer fetusMillimetres,

        @Size(max = 500) String mortalitySourceText,
        @Size(max = 500) String collectionRouteText,
        @Size(max = 500) String managementUnitReason,
        @Size(max = 500) String seenWith,
        @Size(max = 2000) String notes,
        @Valid Contact contact,
        @Valid ExactPoint point,
        OffsetDateTime enteredAt,
        Boolean enteredInError,
        @Size(max = 1000) String reason) {
    /** The word for a management unit that is not known. */
    public static final String UNKNOWN = "UNKNOWN";

    public TakeInAnimal {
        specimens = specimens == null ? List.of() : List.copyOf(specimens);
        identifiers = identifiers == null ? List.of() : List.copyOf(identifiers);
    }

    /** The facts, apart from teeth and tissue, with what was left out filled in. */
    AnimalFacts facts(LocalDate diedOnDay) {
        AnimalDetails details = new AnimalDetails(
                antlers,
                antlerPoints,
                fieldDressedKilograms,
                lactating,
                fetusMillimetres,
                mortalitySourceText,
                collectionRouteText,
                managementUnitReason,
                seenWith,
                notes);
        return new AnimalFacts(
                species.trim(),
                origin == null ? Origin.WILD : origin,
                sex,
                sexEvidence == null ? SexEvidence.UNKNOWN : sexEvidence,
                diedOnDay,
                diedOnPrecision == null ? DiedOnPrecision.DAY : diedOnPrecision,
                diedOnReason,
                managementUnit.trim().equalsIgnoreCase(UNKNOWN) ? null : managementUnit.trim(),
                station.trim(),
                mortalitySource,
                collectionRoute,
                clinicalSigns == null ? ClinicalSigns.NOT_OBSERVED : clinicalSigns,
                samplingBasis,
                jawStatus == null ? JawStatus.READ : jawStatus,
                jawReason,
                details,
                identifiers,
                Boolean.TRUE.equals(enteredInError),
                Boolean.TRUE.equals(enteredInError) ? reason : null);
    }
}
