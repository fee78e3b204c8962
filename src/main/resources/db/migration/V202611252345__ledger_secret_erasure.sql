-- That a text, a name or a signature kept beside an event was erased: the event holds its digest still.
create table ledger_secret_erasure (
    event uuid not null constraint ledger_secret_erasure_event references ledger_event,
    name text not null,                              -- which field of the event, as in ledger_secret
    erased_by text not null,
    erased_at timestamptz not null,
    reason text not null constraint ledger_secret_erasure_reason check (length(reason) between 1 and 500),
    primary key (event, name)
);
call make_append_only('ledger_secret_erasure');
comment on table ledger_secret_erasure is 'Who erased which text kept beside an event, when and why';
