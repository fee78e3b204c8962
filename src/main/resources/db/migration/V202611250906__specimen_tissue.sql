create table specimen (
    code text primary key constraint specimen_label references label,
    parent text constraint specimen_parent references specimen,   -- a piece cut from it
    tissue text not null,
    tissue_text text,
    side text not null,
    condition text not null,
    preservation text not null,                      -- today's; its history stands in specimen_preservation
    collected_at timestamptz not null,
    collected_by text not null,
    archived boolean not null default false,         -- kept, no order: never holds an outcome
    recorded_by text not null,
    recorded_at timestamptz not null,
    version int not null default 0
);
create index specimen_parent_of on specimen (parent) where parent is not null;
call keep_history('specimen', 'code');
create table specimen_preservation (
    id bigint generated always as identity primary key,
    code text not null constraint specimen_preservation_of references specimen,
    preservation text not null,
    since timestamptz not null,
    by_actor text not null,
    reason text
);
call make_append_only('specimen_preservation');
-- "What is under code X came from animal B": asked by one person, confirmed by another.
create table re_attribution (
    id uuid primary key,
    code text not null constraint re_attribution_label references label,
    from_kit text not null constraint re_attribution_from references kit,
    to_kit text not null constraint re_attribution_to references kit,
    reason text not null,
    evidence text not null,
    asked_by text not null,
    asked_at timestamptz not null
);
call make_append_only('re_attribution');
create table re_attribution_decision (
    re_attribution uuid primary key constraint re_attribution_decision_of references re_attribution,
    confirmed boolean not null,                      -- false: withdrawn or refused, with reason
    reason text,
    by_actor text not null,
    at timestamptz not null
);
call make_append_only('re_attribution_decision');
