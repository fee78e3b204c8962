-- What an animal of a class says about the presence of a disease against one of the reference class (relative risk 1),
-- with its citation. Weights are specific to species, herd and source: none come with the service. A changed weight is a
-- new set; the plan's setting RISK_WEIGHT_SET names the set in use.
create table risk_weight (
    id bigint generated always as identity primary key,
    weight_set text not null,
    disease text not null constraint risk_weight_disease references disease,
    species text not null constraint risk_weight_species references species,
    age_class text not null,                         -- FAWN, YEARLING, ADULT
    sex text not null,                               -- MALE, FEMALE
    mortality_source text not null,
    clinical_signs text not null,                    -- NONE_SEEN, SEEN
    relative_risk numeric not null constraint risk_weight_relative_risk check (relative_risk >= 0),
    population_share numeric constraint risk_weight_population_share check (population_share between 0 and 1),
    citation text not null,
    constraint risk_weight_once
        unique (weight_set, disease, species, age_class, sex, mortality_source, clinical_signs)
);
comment on table risk_weight is 'Relative risks by class, in sets, each with its citation';
call keep_history('risk_weight', 'weight_set');
