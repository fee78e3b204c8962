-- Where a code's chain ends; locked in code order before events are appended.
create table custody_head (
    code text primary key,
    sequence int not null,
    hash text not null,
    custodian_kind text not null constraint custody_head_kind check (custodian_kind in ('PERSON', 'PARTY', 'STORE')),
    custodian text not null,
    box text,
    place text,
    offered uuid,                                    -- open hand-over
    last_kind text not null,
    last_occurred_at timestamptz not null,
    collected_at timestamptz not null
);
create index custody_head_in_box on custody_head (box) where box is not null;
create index custody_head_of_custodian on custody_head (custodian_kind, custodian);
create table box (
    code text primary key constraint box_label references label,
    place text,
    opened_by text not null,
    opened_at timestamptz not null,
    tamper_seal text,
    state text not null default 'OPEN',
    version int not null default 0
);
call keep_history('box', 'code');
create table hand_over (
    id uuid primary key,
    from_kind text not null,
    from_custodian text not null,
    to_kind text not null,
    to_custodian text not null,
    place text,
    occurred_at timestamptz not null,
    offered_by text not null,
    offered_at timestamptz not null,
    reason text,
    state text not null default 'OFFERED',
    version int not null default 0
);
create index hand_over_open on hand_over (to_custodian, state);
call keep_history('hand_over', 'id');
create table hand_over_item (
    hand_over uuid not null constraint hand_over_item_of references hand_over,
    code text not null,
    state text not null default 'OFFERED',           -- OFFERED, ACCEPTED, REFUSED, MISSING
    primary key (hand_over, code)
);
create table discrepancy (
    id uuid primary key,
    code text not null,
    kind text not null,                              -- SHORT, OVER, DAMAGED, WRONG_ID, SEAL_MISMATCH, TEMPERATURE, OTHER
    owner text not null,
    due_on date not null,
    evidence text,
    outcome text,                                    -- FOUND, MISCOUNT, MISLABEL, LOST, DESTROYED, ACCEPTED_WITH_DISCLAIMER
    subject text,                                    -- hand-over or submission it arose in
    opened_by text not null,
    opened_at timestamptz not null,
    closed_at timestamptz,
    version int not null default 0
);
create index discrepancy_open on discrepancy (due_on) where closed_at is null;
call keep_history('discrepancy', 'id');
