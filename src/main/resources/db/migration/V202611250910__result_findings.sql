create table result_import (
    id uuid primary key,
    laboratory text not null constraint result_import_laboratory references laboratory,
    format text not null,
    digest text not null,                            -- SHA-256 of the file, hex
    file_name text,
    state text not null,                             -- PREVIEWED, POSTED
    rows int not null,
    postable int not null,
    uploaded_by text not null,
    uploaded_at timestamptz not null,
    posted_by text,
    posted_at timestamptz,
    posted_rows int,
    left_out int[] not null default '{}',
    version int not null default 0
);
create table result_import_row (
    import uuid not null constraint result_import_row_of references result_import,
    line int not null,
    specimen_code text, accession text, item text, method text, stage text, finding text, status text,
    tested_on text, reported_on text, unsuitable_reason text, measured_value text, performing_laboratory text,
    corrects text, run text,
    state text not null default 'NEW',               -- NEW, POSTED, HELD, REPEAT
    primary key (import, line)
);
create table result_import_problem (
    import uuid not null constraint result_import_problem_of references result_import,
    line int not null,
    field text not null,
    rule text not null,
    message text not null
);
create index result_import_problem_of_import on result_import_problem (import, line);
create table finding (
    id uuid primary key,
    method text not null constraint finding_method references test_method,
    disease text not null constraint finding_disease references disease,
    stage text not null constraint finding_stage check (stage in ('SCREENING', 'REPEAT', 'CONFIRMATORY', 'ADJUNCT')),
    finding text not null constraint finding_finding check (finding in
        ('NOT_DETECTED', 'DETECTED', 'SUSPECT', 'INCONCLUSIVE', 'UNSUITABLE', 'NOT_TESTED', 'INVALID_RUN')),
    status text not null constraint finding_status check (status in ('PRELIMINARY', 'FINAL', 'CORRECTED', 'CANCELLED')),
    laboratory text not null constraint finding_laboratory references laboratory,
    performing_laboratory text,
    accession text not null,
    item text,
    tested_on date,
    reported_on date not null,
    reason text,                                     -- coded: why unsuitable or not tested
    measured_value text,                             -- verbatim
    run text,
    pool boolean not null default false,             -- specimens of several animals
    corrects uuid constraint finding_corrects references finding,
    import uuid constraint finding_import references result_import,
    import_line int,
    recorded_by text not null,
    recorded_at timestamptz not null
);
create index finding_by_accession on finding (upper(accession));
create unique index finding_corrected_once on finding (corrects) where corrects is not null;
call make_append_only('finding');
create table finding_specimen (
    finding uuid not null constraint finding_specimen_of references finding,
    code text not null constraint finding_specimen_code references specimen,
    primary key (finding, code)
);
create index finding_specimen_by_code on finding_specimen (code);
call make_append_only('finding_specimen');
-- Releases and their withdrawals; the newest per kit and disease rules.
create table release (
    id bigint generated always as identity primary key,
    kit text not null constraint release_animal references animal,
    disease text not null constraint release_disease references disease,
    derived_outcome text not null,                   -- what was released
    reason text,
    by_actor text not null,
    at timestamptz not null
);
create index release_of on release (kit, disease, id);
call make_append_only('release');
-- Why an animal's outcome is what it is, in words; rewritten with each derivation.
create table outcome_explanation (
    kit text not null constraint outcome_explanation_animal references animal,
    disease text not null constraint outcome_explanation_disease references disease,
    explanation text not null,
    review text,                                     -- why a person should look, or null
    derived_at timestamptz not null,
    primary key (kit, disease)
);
call keep_history('outcome_explanation', 'kit');
