-- The first detection of a disease in a unit: what is held, checked, confirmed, traced and told before anything is released.
create table incident (
    id uuid primary key,
    disease text not null constraint incident_disease references disease,
    unit text not null constraint incident_unit references management_unit,
    season text constraint incident_season references season,
    state text not null default 'OPEN' constraint incident_state check (state in ('OPEN', 'CLOSED')),
    opened_at timestamptz not null,
    closed_as text constraint incident_closed_as check (closed_as in ('CONFIRMED', 'NOT_CONFIRMED')),
    closing_note text,
    closed_by text,
    closed_at timestamptz,
    version int not null default 0,
    constraint incident_closed_whole check ((state = 'CLOSED') = (closed_as is not null and closed_at is not null))
);
create unique index incident_open_once on incident (disease, unit) where state = 'OPEN';
create index incident_of_unit on incident (unit, disease);
call keep_history('incident', 'id');
create table incident_animal (
    incident uuid not null constraint incident_animal_of references incident,
    kit text not null constraint incident_animal_kit references animal,
    at timestamptz not null,
    primary key (incident, kit)
);
call make_append_only('incident_animal');
create table incident_step (
    id text primary key,                             -- incident and kind
    incident uuid not null constraint incident_step_of references incident,
    kind text not null,
    position int not null,
    owner text constraint incident_step_owner references person,
    due_on date,
    state text not null default 'OPEN' constraint incident_step_state check (state in ('OPEN', 'DONE', 'NOT_POSSIBLE')),
    note text,
    version int not null default 0,
    constraint incident_step_once unique (incident, kind)
);
call keep_history('incident_step', 'id');
-- Who is told, in this order; no names of private people.
create table incident_telling (
    id text primary key,                             -- incident and position
    incident uuid not null constraint incident_telling_of references incident,
    position int not null,
    whom text not null,
    told_at timestamptz,
    told_by text,
    note text,                                       -- how; why out of order
    constraint incident_telling_once unique (incident, position)
);
call keep_history('incident_telling', 'id');
