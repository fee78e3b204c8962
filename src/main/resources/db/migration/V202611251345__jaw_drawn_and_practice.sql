-- Whether the lot asked a second reader for this jaw, settled with its first reading by the plan then in force; and whether
-- the plan let this person's readings count alone.
alter table jaw_reading add column drawn boolean not null default false;
alter table jaw_reading add column counts_alone boolean not null default true;
comment on column jaw_reading.drawn is 'drawn by lot for a blind second reading, when the jaw was first read';
comment on column jaw_reading.counts_alone is 'false: stands only where another reader gives the same class';

-- Jaws read before: by the share that the plan has for everywhere. The table refuses changes to everybody, so it looks away once.
alter table jaw_reading disable trigger jaw_reading_append_only;
update jaw_reading r set drawn = true
 where cast(cast('x' || substr(md5(r.kit), 1, 7) as bit(28)) as int) < 268435456 * coalesce(
         (select cast(s.value as float8) from plan_setting s
           where s.name = 'BLIND_SECOND_READING_SHARE' and s.season is null and s.region is null and s.unit is null), 0.05);
alter table jaw_reading enable trigger jaw_reading_append_only;

-- Jaws by which readers are measured, beside those drawn by the service itself.
create table reference_jaw (
    id uuid primary key,
    kit text not null constraint reference_jaw_animal references animal,
    kind text not null constraint reference_jaw_kind check (kind in ('KNOWN_AGE', 'AGREED')),
    age_class text not null constraint reference_jaw_class check (age_class in ('FAWN', 'YEARLING', 'ADULT')),
    observation text,                                -- what was seen, as JSON, for the key's steps; null: nobody said
    source text not null,                            -- how the age is known
    added_by text not null,
    added_at timestamptz not null,
    retired_by text,                                 -- null: in use
    retired_at timestamptz,
    retired_reason text,
    constraint reference_jaw_retired check ((retired_at is null) = (retired_by is null) and (retired_at is null) = (retired_reason is null))
);
create unique index reference_jaw_once on reference_jaw (kit) where retired_at is null;
call keep_history('reference_jaw', 'id');
comment on table reference_jaw is 'Reference panel: jaws of known or agreed age with photos';

-- A blinded round of practice and its score.
create table practice_round (
    id uuid primary key,
    person text not null,                            -- roster code or sign-in name
    season text constraint practice_round_season references season,   -- null: begun outside every season
    rule_set_version text not null,
    jaws int not null constraint practice_round_jaws check (jaws > 0),
    begun_at timestamptz not null,
    finished_at timestamptz,                         -- null: not all answered
    right_answers int,
    constraint practice_round_scored check ((finished_at is null) = (right_answers is null))
);
create index practice_round_of on practice_round (person, begun_at);
call keep_history('practice_round', 'id');
create table practice_jaw (
    round uuid not null constraint practice_jaw_round references practice_round,
    position int not null,
    jaw text not null,                               -- name of a drawn jaw, or id of a reference jaw
    kind text not null constraint practice_jaw_kind check (kind in ('DRAWN', 'KNOWN_AGE', 'AGREED')),
    right_class text not null,
    given_class text,                                -- null: not answered
    given_at timestamptz,
    primary key (round, position),
    constraint practice_jaw_given check ((given_class is null) = (given_at is null))
);
call keep_history('practice_jaw', 'round');
comment on table practice_jaw is 'The jaws of a round in their order; the right class is kept from the person until all are answered';
