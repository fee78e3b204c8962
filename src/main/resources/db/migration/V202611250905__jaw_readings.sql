create table jaw_reading (
    id uuid primary key,
    kit text not null constraint jaw_reading_animal references animal,
    read_at timestamptz not null,
    examiner text not null,                          -- roster code or sign-in name
    method text not null default 'TOOTH_REPLACEMENT',
    observation text not null,                      -- exactly as given
    key_class text,
    age_class text not null,
    certainty text not null,
    disputed boolean not null,
    contradictions text not null default '[]',
    needs_second_reader boolean not null default false,
    blind boolean not null default false,            -- given without sight of an earlier reading
    side text, jaw_state text, whereabouts text, note text,
    rule_set_version text not null,
    received_by text not null,
    received_at timestamptz not null
);
create index jaw_reading_of on jaw_reading (kit, received_at, id);
call make_append_only('jaw_reading');
create table designated_age (
    id bigint generated always as identity primary key,
    kit text not null constraint designated_age_animal references animal,
    reading uuid constraint designated_age_reading references jaw_reading,
    age_class text not null,
    reason text not null,
    by_actor text not null,
    at timestamptz not null
);
create index designated_age_of on designated_age (kit, id);
call make_append_only('designated_age');
