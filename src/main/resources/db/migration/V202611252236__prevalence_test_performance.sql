-- How often tests find infected animals and pass over the others, as published: sets of sensitivity and specificity, each
-- with its citation. What a code says never changes, as figures rest on it; other figures are another code. None come with
-- the service. Sensitivity and specificity stand either as fractions, taken as known, or as the counts of the study that
-- estimated them.
create table test_performance (
    code text primary key,
    name text not null,
    disease text not null constraint test_performance_disease references disease,
    species text[] not null constraint test_performance_species check (cardinality(species) > 0),
    methods text[] not null constraint test_performance_methods check (cardinality(methods) > 0),
    tissues text[] not null constraint test_performance_tissues check (cardinality(tissues) > 0),
    kind text not null constraint test_performance_kind check (kind in ('ANIMAL_LEVEL', 'RELATIVE')),
    reference text not null,                         -- what the test was held against
    sensitivity numeric constraint test_performance_sensitivity check (sensitivity between 0 and 1),
    specificity numeric constraint test_performance_specificity check (specificity between 0 and 1),
    infected int constraint test_performance_infected check (infected > 0),
    detected_of_infected int,
    uninfected int constraint test_performance_uninfected check (uninfected > 0),
    not_detected_of_uninfected int,
    population text not null,                        -- which animals the figures are of
    source text not null,                            -- publication and where in it
    source_seen text not null constraint test_performance_source_seen check (source_seen in ('READ', 'FROM_MEMORY', 'INVENTED')),
    as_of date not null,                             -- the day on which the figures were taken from the source
    constraint test_performance_fractions_or_counts check (
        (sensitivity is not null and specificity is not null
            and infected is null and detected_of_infected is null
            and uninfected is null and not_detected_of_uninfected is null)
        or (sensitivity is null and specificity is null
            and coalesce(detected_of_infected between 0 and infected, false)
            and coalesce(not_detected_of_uninfected between 0 and uninfected, false)))
);
comment on table test_performance is 'Published sensitivity and specificity of tests on tissues, in sets, each with its citation';
comment on column test_performance.methods is 'Codes of the test methods that it speaks of';
comment on column test_performance.tissues is 'Tissues that it speaks of';
comment on column test_performance.kind is 'ANIMAL_LEVEL: among infected animals; RELATIVE: among animals that another test detected';
comment on column test_performance.source_seen is 'READ: figures read in the source or its abstract; FROM_MEMORY: not looked up; INVENTED: for a demo';
call keep_history('test_performance', 'code');
