package org.dentary.animal;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.dentary.animal.line.LineView;

/** Reads animals, their identifiers, links and lines. */
@ApplicationScoped
class AnimalQueries {
    /** A row of the table, codes as text. */
    record Row(
            String kit,
            String species,
            String origin,
            String sex,
            String sexEvidence,
            LocalDate diedOn,
            String diedOnPrecision,
            String diedOnReason,
            String unit,
            String station,
            String season,
            String mortalitySource,
            String collectionRoute,
            String clinicalSigns,
            String samplingBasis,
            String jawStatus,
            String jawReason,
            String details,
            Boolean enteredInError,
            String errorReason,
            Boolean notAttributable,
            String sameAs,
            String recordedBy,
            Instant recordedAt,
            Integer version) {}

    private static final String ANIMAL = """
            select kit, species, origin, sex, sex_evidence, died_on, died_on_precision, died_on_reason, unit, station, season,
                   mortality_source, collection_route, clinical_signs, sampling_basis, jaw_status, jaw_reason, details,
                   entered_in_error, error_reason, not_attributable, same_as, recorded_by, recorded_at, version
              from animal where kit = :kit
            """;
    private static final String IDENTIFIERS = """
            select type, nullif(issuer, '') as issuer, value from animal_identifier where kit = :kit
             order by type, issuer, value
            """;
    private static final String LINKS = """
            select kit, same_as, reason, evidence, by_actor, at from animal_link where kit = :kit or same_as = :kit order by id
            """;
    private static final String NEWEST_LINK = """
            select kit, same_as, reason, evidence, by_actor, at from animal_link where kit = :kit order by id desc limit 1
            """;
    private static final String LINES = """
            select l.kit, l.disease, l.age_class, l.age_disputed, l.has_specimen, l.derived_outcome, l.outcome, l.footnotes,
                   l.exclusion
              from line l join disease d on d.code = l.disease
             where l.kit = any(:kits) and l.closed_at is null order by l.kit, d.position, d.code
            """;
    private static final String KITS = """
            select m.kit from animal_kit k join animal_kit m on m.counted = k.counted
             where k.kit = :kit order by m.kit <> m.counted, m.kit
            """;
    private static final String DUPLICATES = "select kit from animal where same_as = :kit order by kit";

    private final EntityManager entities;
    private final ObjectMapper json;

    AnimalQueries(EntityManager entities, ObjectMapper json) {
        this.entities = entities;
        this.json = json;
    }

    @SuppressWarnings("unchecked")
    Optional<AnimalView> animal(String kit) {
        List<Row> rows = entities.createNativeQuery(ANIMAL, Row.class)
                .setParameter("kit", kit)
                .getResultList();
        return rows.stream().findFirst().map(this::view);
    }

    @SuppressWarnings("unchecked")
    LinkView newestLink(String kit) {
        return ((List<LinkView>) entities.createNativeQuery(NEWEST_LINK, LinkView.class)
                        .setParameter("kit", kit)
                        .getResultList())
                .stream().findFirst().orElse(null);
    }

    @SuppressWarnings("unchecked")
    List<LinkView> links(String kit) {
        return entities.createNativeQuery(LINKS, LinkView.class)
                .setParameter("kit", kit)
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    List<LineView> lines(Collection<String> kits) {
        return entities.createNativeQuery(LINES, LineView.class)
                .setParameter("kits", kits.toArray(String[]::new))
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    List<String> duplicatesOf(String kit) {
        return entities.createNativeQuery(DUPLICATES).setParameter("kit", kit).getResultList();
    }

    @SuppressWarnings("unchecked")
    List<String> kitsOf(String kit) {
        return entities.createNativeQuery(KITS).setParameter("kit", kit).getResultList();
    }

    @SuppressWarnings("unchecked")
    List<Identifier> identifiers(String kit) {
        return entities.createNativeQuery(IDENTIFIERS, Identifier.class)
                .setParameter("kit", kit)
                .getResultList();
    }

    private AnimalView view(Row row) {
        AnimalFacts facts = new AnimalFacts(
                row.species(),
                Origin.valueOf(row.origin()),
                Sex.valueOf(row.sex()),
                SexEvidence.valueOf(row.sexEvidence()),
                row.diedOn(),
                DiedOnPrecision.valueOf(row.diedOnPrecision()),
                row.diedOnReason(),
                row.unit(),
                row.station(),
                MortalitySource.valueOf(row.mortalitySource()),
                CollectionRoute.valueOf(row.collectionRoute()),
                ClinicalSigns.valueOf(row.clinicalSigns()),
                SamplingBasis.valueOf(row.samplingBasis()),
                JawStatus.valueOf(row.jawStatus()),
                row.jawReason(),
                details(row.details()),
                identifiers(row.kit()),
                row.enteredInError(),
                row.errorReason());
        return new AnimalView(
                row.kit(),
                facts,
                row.season(),
                row.sameAs(),
                row.notAttributable(),
                row.recordedBy(),
                row.recordedAt(),
                row.version());
    }

    private AnimalDetails details(String text) {
        try {
            return json.readValue(text, AnimalDetails.class);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("the details of an animal are not what was written", e);
        }
    }
}
