package org.dentary.intake;

import io.quarkus.qute.TemplateData;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.animal.Antlers;
import org.dentary.animal.CollectionRoute;
import org.dentary.animal.DiedOnPrecision;
import org.dentary.animal.MortalitySource;
import org.dentary.animal.Origin;
import org.dentary.animal.SamplingBasis;
import org.dentary.animal.SexEvidence;
import org.dentary.jaw.key.KeyQuestion;
import org.dentary.plan.PlanService;
import org.dentary.plan.StationView;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.Role;
import org.dentary.specimen.Condition;
import org.dentary.specimen.Preservation;
import org.dentary.specimen.Side;
import org.dentary.specimen.Tissue;

/**
 * What the intake's pages offer to choose from, in the order shown.
 *
 * @param stations only those the account serves
 * @param zones the IANA name of each station's clock
 * @param questions the questions of the jaw key
 */
@TemplateData
public record IntakeChoices(
        List<Choice> stations,
        Map<String, String> zones,
        List<Choice> units,
        List<Choice> species,
        List<Choice> sources,
        List<Choice> routes,
        List<Choice> bases,
        List<Choice> sexEvidence,
        List<Choice> origins,
        List<Choice> precisions,
        List<Choice> antlers,
        List<Choice> preservations,
        List<Choice> conditions,
        List<Choice> tissues,
        List<Choice> sides,
        List<KeyQuestion> questions) {
    /** A code and its words. */
    @TemplateData
    public record Choice(String value, String words) {}

    static IntakeChoices of(PlanService plan, Account account) {
        return new IntakeChoices(
                plan.stations().stream()
                        .filter(station -> account.role() != Role.SAMPLER || account.serves(station.code()))
                        .map(station -> new Choice(station.code(), station.name()))
                        .toList(),
                plan.stations().stream().collect(Collectors.toMap(StationView::code, StationView::timeZone)),
                Stream.concat(
                                plan.units().stream().map(unit -> new Choice(unit.code(), unit.name())),
                                Stream.of(new Choice(TakeInAnimal.UNKNOWN, "Not known")))
                        .toList(),
                plan.species().stream()
                        .map(species -> new Choice(species.code(), species.name()))
                        .toList(),
                choices(MortalitySource.values(), MortalitySource::words),
                choices(CollectionRoute.values(), CollectionRoute::words),
                choices(SamplingBasis.values(), SamplingBasis::words),
                choices(SexEvidence.values(), SexEvidence::words),
                choices(Origin.values(), Origin::words),
                choices(DiedOnPrecision.values(), DiedOnPrecision::words),
                choices(Antlers.values(), Antlers::words),
                choices(Preservation.values(), Preservation::words),
                choices(Condition.values(), Condition::words),
                choices(Tissue.values(), Tissue::words),
                choices(Side.values(), Side::words),
                List.of(KeyQuestion.values()));
    }

    private static <E extends Enum<E>> List<Choice> choices(E[] values, Function<E, String> words) {
        return Arrays.stream(values)
                .map(value -> new Choice(value.name(), words.apply(value)))
                .toList();
    }
}
