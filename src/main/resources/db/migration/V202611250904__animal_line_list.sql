create table animal (
    kit text primary key constraint animal_kit references kit,
    species text not null constraint animal_species references species,
    origin text not null,
    sex text not null,
    sex_evidence text not null,
    died_on date,                                    -- null: unknown
    died_on_precision text not null default 'DAY',
    died_on_reason text,
    unit text constraint animal_unit references management_unit,     -- null: unknown
    station text not null constraint animal_station references station,
    season text constraint animal_season references season,          -- from died_on in the station's zone; null: none
    mortality_source text not null,
    collection_route text not null,
    clinical_signs text not null,
    sampling_basis text not null,
    jaw_status text not null,
    jaw_reason text,
    details text not null default '{}',             -- what describes the animal and enters no report: antlers, mass, notes
    entered_in_error boolean not null default false,
    error_reason text,
    not_attributable boolean not null default false, -- a swapped label is unresolved: counted nowhere
    same_as text constraint animal_same_as references animal,     -- the kit that counts; set on the duplicate
    recorded_by text not null,
    recorded_at timestamptz not null,
    version int not null default 0,
    constraint animal_not_itself check (same_as <> kit)
);
create index animal_of_season on animal (season, kit);
create index animal_same_as_of on animal (same_as) where same_as is not null;
create index animal_recorded on animal (recorded_at desc, kit);
call keep_history('animal', 'kit');
create table animal_identifier (
    kit text not null constraint animal_identifier_kit references animal,
    type text not null,                              -- REGISTRATION, EAR_TAG, OLD_ID ...
    issuer text not null default '',
    value text not null,
    primary key (kit, type, issuer, value)
);
create index animal_identifier_value on animal_identifier (upper(value));
-- Linking and unlinking of kits; the animal's same_as follows the newest row.
create table animal_link (
    id bigint generated always as identity primary key,
    kit text not null constraint animal_link_kit references animal,
    same_as text constraint animal_link_same_as references animal,   -- null: the link is undone
    reason text not null,
    evidence text,
    by_actor text not null,
    at timestamptz not null
);
call make_append_only('animal_link');

-- The line list: one open row per kit and disease; a revision closes the old row and opens a new one.
create table line (
    id bigint generated always as identity primary key,
    kit text not null constraint line_kit references animal,
    disease text not null constraint line_disease references disease,
    season text constraint line_season references season,
    species text not null,
    origin text not null,
    sex text not null,
    sex_evidence text not null,
    age_class text not null,
    age_disputed boolean not null,
    unit text,
    region text,
    station text not null,
    died_on date,
    mortality_source text not null,
    collection_route text not null,
    clinical_signs text not null,
    sampling_basis text not null,
    has_specimen boolean not null,
    derived_outcome text not null,                   -- liaison, coordinator, notifier, auditor
    outcome text not null,                           -- released: everybody else
    footnotes text not null default '',
    exclusion text not null default '',              -- '', ENTERED_IN_ERROR, DUPLICATE, NOT_ATTRIBUTABLE
    cause text not null,                             -- what revised it: INTAKE, READING, FINDING, RELEASE ...
    opened_at timestamptz not null,
    closed_at timestamptz,
    constraint line_outcome check (outcome in
        ('DETECTED', 'PENDING', 'NOT_DETECTED', 'INCONCLUSIVE', 'UNSUITABLE', 'NOT_TESTED'))
);
create unique index line_open_once on line (kit, disease) where closed_at is null;
create index line_of_season on line (season, disease, species, kit) where closed_at is null;
create index line_of_kit on line (kit, disease, id);

create table data_cut (
    id uuid primary key,
    season text not null constraint data_cut_season references season,
    name text not null,
    made_by text not null,
    made_at timestamptz not null,
    superseded_reason text,
    superseded_by text,
    superseded_at timestamptz,
    context text not null default '{}',              -- last sync per station, pending per laboratory, as JSON
    version int not null default 0,
    constraint data_cut_name unique (season, name)
);
call keep_history('data_cut', 'id');
create table data_cut_line (
    cut uuid not null constraint data_cut_line_cut references data_cut,
    line bigint not null constraint data_cut_line_line references line,
    primary key (cut, line)
);
call make_append_only('data_cut_line');
-- The first answer of a report on a cut, as the bytes that were sent, served from there ever after.
create table report_answer (
    cut uuid not null constraint report_answer_cut references data_cut,
    question text not null,                          -- RFC 8785 form of the parameters
    media_type text not null,
    answer text not null,
    digest text not null,                            -- SHA-256 of the answer, hex
    rule_version text not null,
    answered_at timestamptz not null,
    primary key (cut, question, media_type)
);
call make_append_only('report_answer');
