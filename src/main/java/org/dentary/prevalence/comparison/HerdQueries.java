package org.dentary.prevalence.comparison;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.comparison.HerdStructure.HerdClass;

/** Reads herd structures whole. */
@ApplicationScoped
public class HerdQueries {
    private static final String ALL = """
            select code, name, as_of, source, species, age_class, sex, animals from herd_structure
             order by code, array_position(array['FAWN', 'YEARLING', 'ADULT'], age_class),
                      array_position(array['MALE', 'FEMALE'], sex)
            """;

    private final EntityManager entities;

    HerdQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** One row of a structure. */
    public record Row(
            String code,
            String name,
            LocalDate asOf,
            String source,
            String species,
            String ageClass,
            String sex,
            Integer animals) {}

    /** All of them, by code. */
    @SuppressWarnings("unchecked")
    List<HerdStructure> all() {
        Map<String, HerdStructure> herds = new LinkedHashMap<>();
        for (Row row : (List<Row>) entities.createNativeQuery(ALL, Row.class).getResultList()) {
            herds.computeIfAbsent(
                            row.code(),
                            code -> new HerdStructure(
                                    code, row.name(), row.asOf(), row.source(), row.species(), new ArrayList<>()))
                    .classes()
                    .add(new HerdClass(row.ageClass(), row.sex(), row.animals()));
        }
        return List.copyOf(herds.values());
    }

    /**
     * The structure of that code for that species.
     *
     * @throws InvalidInput if there is none, or it is of another species
     */
    HerdStructure require(String code, String species) {
        List<HerdStructure> all = all();
        HerdStructure herd = all.stream()
                .filter(one -> one.code().equals(code))
                .findFirst()
                .orElseThrow(() -> InvalidInput.field(
                        "herd",
                        "HERD_UNKNOWN",
                        "'" + code + "' is no herd structure; "
                                + (all.isEmpty()
                                        ? "none is set up yet, the coordinator imports herd-structures"
                                        : "allowed: "
                                                + String.join(
                                                        ", ",
                                                        all.stream()
                                                                .map(HerdStructure::code)
                                                                .toList()))));
        if (!herd.species().equals(species)) {
            throw InvalidInput.field(
                    "herd",
                    "HERD_OF_ANOTHER_SPECIES",
                    "herd structure '" + code + "' is of " + herd.species() + ", the animals are " + species
                            + "; choose a structure of that species");
        }
        return herd;
    }
}
