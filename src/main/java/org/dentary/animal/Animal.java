package org.dentary.animal;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;

/**
 * An animal's facts in the database. Links and unresolved swaps are not its own: they are written set-based. Its version
 * is counted here and not by the mapping, as a change of identifiers alone counts too; the row is locked before.
 */
@Entity
@Table(name = "animal")
class Animal {
    @Id
    private String kit;

    private String species;
    private String origin;
    private String sex;

    @Column(name = "sex_evidence")
    private String sexEvidence;

    @Column(name = "died_on")
    private LocalDate diedOn;

    @Column(name = "died_on_precision")
    private String diedOnPrecision;

    @Column(name = "died_on_reason")
    private String diedOnReason;

    private String unit;
    private String station;
    private String season;

    @Column(name = "mortality_source")
    private String mortalitySource;

    @Column(name = "collection_route")
    private String collectionRoute;

    @Column(name = "clinical_signs")
    private String clinicalSigns;

    @Column(name = "sampling_basis")
    private String samplingBasis;

    @Column(name = "jaw_status")
    private String jawStatus;

    @Column(name = "jaw_reason")
    private String jawReason;

    private String details;

    @Column(name = "entered_in_error")
    private boolean enteredInError;

    @Column(name = "error_reason")
    private String errorReason;

    @Column(name = "recorded_by")
    private String recordedBy;

    @Column(name = "recorded_at")
    private Instant recordedAt;

    private int version;

    protected Animal() {}

    Animal(String kit, String recordedBy, Instant recordedAt) {
        this.kit = kit;
        this.recordedBy = recordedBy;
        this.recordedAt = recordedAt;
        this.version = 0;
    }

    void become(AnimalFacts facts, String season, String details) {
        this.species = facts.species();
        this.origin = facts.origin().name();
        this.sex = facts.sex().name();
        this.sexEvidence = facts.sexEvidence().name();
        this.diedOn = facts.diedOn();
        this.diedOnPrecision = facts.diedOnPrecision().name();
        this.diedOnReason = facts.diedOnReason();
        this.unit = facts.unit();
        this.station = facts.station();
        this.season = season;
        this.mortalitySource = facts.mortalitySource().name();
        this.collectionRoute = facts.collectionRoute().name();
        this.clinicalSigns = facts.clinicalSigns().name();
        this.samplingBasis = facts.samplingBasis().name();
        this.jawStatus = facts.jawStatus().name();
        this.jawReason = facts.jawReason();
        this.details = details;
        this.enteredInError = facts.enteredInError();
        this.errorReason = facts.errorReason();
    }

    void correct(AnimalFacts facts, String season, String details) {
        become(facts, season, details);
        version++;
    }

    int version() {
        return version;
    }
}
