create table submission (
    id uuid primary key,
    number bigint generated always as identity constraint submission_number unique,   -- what people say on the phone
    laboratory text not null constraint submission_laboratory references laboratory,
    purpose text not null default 'SURVEILLANCE',
    state text not null default 'PACKING',           -- PACKING, DISPATCHED, RECEIVED, CLOSED
    carrier text, waybill text,
    dispatched_at timestamptz, dispatched_by text,
    received_at timestamptz,
    opened_by text not null,
    opened_at timestamptz not null,
    checklist text not null default '{}',
    version int not null default 0
);
create index submission_by_state on submission (state, opened_at);
call keep_history('submission', 'id');
create table submission_specimen (
    submission uuid not null constraint submission_specimen_of references submission,
    code text not null constraint submission_specimen_code references specimen,
    box text constraint submission_specimen_box references box,
    packed_at timestamptz not null,
    packed_by text not null,
    override_reason text,
    receipt text,                                    -- null until told: RECEIVED, SHORT, DAMAGED
    received_at timestamptz,
    primary key (submission, code)
);
create index submission_specimen_by_code on submission_specimen (code);
-- What arrived and was on no list.
create table submission_over (
    submission uuid not null constraint submission_over_of references submission,
    given text not null,
    received_at timestamptz not null,
    primary key (submission, given)
);
