-- How far a large import is, told by transactions of its own. Whoever works at it holds the row locked: a service that was
-- killed lets go at once, so that nothing is stuck. What is done is taken away with the work's own transaction.
create table result_import_work (
    import uuid primary key,                         -- of an import that may not be there yet
    act text not null constraint result_import_work_act check (act in ('PREVIEW', 'POSTING')),
    file_name text,
    begun_by text not null,
    begun_at timestamptz not null,
    refusal text                                     -- why it ended without being done, in words; null: not refused
);
create table result_import_step (
    import uuid not null constraint result_import_step_of references result_import_work on delete cascade,
    position bigint generated always as identity,
    step text not null constraint result_import_step_step check (step in
        ('READING', 'STORING', 'CHECKING', 'WRITING', 'OUTCOMES')),
    done int not null,                               -- lines or animals of total
    total int not null,
    at timestamptz not null,
    primary key (import, position)
);
