create table person (
    code text primary key, name text not null, position int not null,
    organisation text,
    active boolean not null default true
);
call keep_history('person', 'code');
-- An organisation that can hold or carry samples.
create table party (
    code text primary key, name text not null, position int not null
);
-- A locked place with a named keeper.
create table store (
    code text primary key, name text not null, position int not null,
    station text constraint store_station references station,
    keeper text not null constraint store_keeper references person
);
create table store_access (
    store text not null constraint store_access_store references store,
    person text not null constraint store_access_person references person,
    primary key (store, person)
);
-- "Shown and acknowledged", never "trained".
create table protocol_acknowledgement (
    account text not null constraint protocol_acknowledgement_account references account,
    protocol_version text not null,
    at timestamptz not null,
    primary key (account, protocol_version)
);
call make_append_only('protocol_acknowledgement');
-- Cautions are data: a reviewed set per disease and hazard.
create table caution (
    code text not null,
    version text not null,
    disease text constraint caution_disease references disease,   -- null: every disease
    hazard text not null,                            -- where it is shown, such as INTAKE, PACKING, REPORT
    text text not null,
    authority text not null,                         -- whom it defers to
    reviewed_by text,
    reviewed_on date,
    review_by date,
    position int not null,
    primary key (code, version)
);
