-- Stored answers computed again, by hand or after an upgrade, and every number that moved.
create table report_recheck (
    id uuid primary key,
    release text not null,                           -- the service's version and its rules of reports
    checked_by text not null,                        -- actor; 'service' after an upgrade
    checked_at timestamptz not null,
    answers int not null,                            -- how many were computed again
    unchecked int not null,                          -- kept for another kind of report: not computed here
    moved int not null,                              -- lines of report_recheck_moved
    constraint report_recheck_counts check (answers >= 0 and unchecked >= 0 and moved >= 0)
);
call make_append_only('report_recheck');
create table report_recheck_moved (
    recheck uuid not null constraint report_recheck_moved_of references report_recheck,
    position int not null,
    cut uuid not null constraint report_recheck_moved_cut references data_cut,
    question text not null,                          -- RFC 8785 form, as stored with the answer
    media_type text not null,
    figure text not null,                            -- such as "cells: ADULT, MALE: counted"
    stored text,                                     -- null: not a number there
    computed text,                                   -- null: not there any more
    primary key (recheck, position)
);
call make_append_only('report_recheck_moved');
comment on table report_recheck is 'stored answers computed again; each finding in report_recheck_moved';

-- A question with a name, to be asked again of another cut.
create table saved_question (
    id uuid primary key,
    name text not null,
    season text not null constraint saved_question_season references season,   -- asked of it; a cut brings its own
    query text not null,                             -- the address's part behind the question mark, without season and cut
    made_by text not null,
    made_at timestamptz not null,
    withdrawn boolean not null default false,        -- no longer offered; kept, for somebody may quote it
    version int not null default 0
);
create unique index saved_question_name on saved_question (lower(name)) where not withdrawn;
call keep_history('saved_question', 'id');
comment on table saved_question is 'questions of the prevalence report, named to be asked again';
