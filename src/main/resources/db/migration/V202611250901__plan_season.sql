create table disease (
    code text primary key, name text not null, position int not null
);
create table species (
    code text primary key, name text not null, position int not null,
    key_reviewed boolean not null default false      -- whether the jaw key was reviewed for it
);
create table region (
    code text primary key, name text not null, position int not null
);
create table season (
    code text primary key,
    name text not null,
    starts_on date not null,
    ends_on date not null,                           -- inclusive
    state text not null default 'DRAFT' constraint season_state check (state in ('DRAFT', 'OPEN', 'CLOSED')),
    version int not null default 0,
    constraint season_dates check (starts_on <= ends_on),
    constraint season_no_overlap exclude using gist (daterange(starts_on, ends_on, '[]') with &&)
);
call keep_history('season', 'code');
create table management_unit (
    code text primary key, name text not null, position int not null,
    region text constraint management_unit_region references region,
    boundary text,                                   -- GeoJSON geometry, WGS 84, longitude first
    boundary_version text
);
create table station (
    code text primary key, name text not null, position int not null,
    unit text constraint station_unit references management_unit,
    time_zone text not null                          -- IANA name
);
create table laboratory (
    code text primary key, name text not null, position int not null,
    address text, contact text,
    turnaround_days int
);
create table test_method (
    code text primary key, name text not null, position int not null,
    disease text not null constraint test_method_disease references disease,
    accepted_tissues text[] not null default '{}'    -- tissues on which the method's word counts
);
-- What a laboratory accepts, from a day on; the newest row in force on the packing day rules.
create table laboratory_acceptance (
    id bigint generated always as identity primary key,
    laboratory text not null constraint laboratory_acceptance_laboratory references laboratory,
    method text not null constraint laboratory_acceptance_method references test_method,
    tissue text not null,
    preservation text not null,
    side text,                                       -- null: any
    max_days int,                                    -- from collection
    in_force_from date not null,
    in_force_to date
);
create index laboratory_acceptance_of on laboratory_acceptance (laboratory, tissue, preservation);
-- The plan's dated settings; names, meanings, defaults and limits stand in the code's list of settings.
create table plan_setting (
    id bigint generated always as identity primary key,
    name text not null,
    value text not null,
    season text constraint plan_setting_season references season,       -- null: every season
    region text constraint plan_setting_region references region,       -- null: every region
    unit text constraint plan_setting_unit references management_unit   -- null: every unit
);
create unique index plan_setting_once on plan_setting (name, coalesce(season, ''), coalesce(region, ''), coalesce(unit, ''));
call keep_history('plan_setting', 'name');
