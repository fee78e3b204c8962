-- How often jaws of each true age class are read as each class: one row per pair of classes of a named matrix. What a code
-- says never changes; another estimate is another code. A code has jaws in every row of a table, or shares.
create table ageing_error_matrix (
    code text not null constraint ageing_error_matrix_code check (code <> 'KNOWN_AGE'),   -- names the whole matrix
    name text not null,                              -- the same in every row of a code, as species, kind, source and as_of
    species text not null constraint ageing_error_matrix_species references species,
    kind text not null constraint ageing_error_matrix_kind check (kind in ('CITED', 'STATED')),
    source text not null,                            -- publication and table, or who states it and why
    as_of date not null,                             -- day of the publication or of the statement
    sex text not null constraint ageing_error_matrix_sex check (sex in ('BOTH', 'MALE', 'FEMALE')),
    true_class text not null constraint ageing_error_matrix_true check (true_class in ('FAWN', 'YEARLING', 'ADULT')),
    read_class text not null constraint ageing_error_matrix_read check (read_class in ('FAWN', 'YEARLING', 'ADULT')),
    jaws int constraint ageing_error_matrix_jaws check (jaws >= 0),
    share numeric constraint ageing_error_matrix_share check (share between 0 and 1),     -- of the true class
    primary key (code, sex, true_class, read_class),
    constraint ageing_error_matrix_jaws_or_share check ((jaws is null) <> (share is null)),
    constraint ageing_error_matrix_stated check (kind = 'CITED' or jaws is null)
);
comment on table ageing_error_matrix is 'Ageing error between age classes, for a what-if of the age pattern';
comment on column ageing_error_matrix.jaws is 'Jaws of known age of the true class that were read as the read class';
call keep_history('ageing_error_matrix', 'code');
