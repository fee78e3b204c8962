-- Herds that prevalence is standardised to: one row per class of a named, dated herd. What a code says never changes;
-- another estimate of the same herd is another code.
create table herd_structure (
    code text not null,                              -- names the whole structure
    name text not null,                              -- the same in every row of a code, as as_of, source and species
    as_of date not null,                             -- the day it describes
    source text not null,                            -- who estimated it and where it is written
    species text not null constraint herd_structure_species references species,
    age_class text not null constraint herd_structure_age_class check (age_class in ('FAWN', 'YEARLING', 'ADULT')),
    sex text not null constraint herd_structure_sex check (sex in ('MALE', 'FEMALE')),
    animals int not null constraint herd_structure_animals check (animals >= 0),   -- living deer of the class, or any count in proportion
    primary key (code, age_class, sex)
);
comment on table herd_structure is 'Deer by age class and sex in a named, dated herd, for direct standardization';
comment on column herd_structure.animals is 'Deer in the class; only the shares of the whole are used';
call keep_history('herd_structure', 'code');
