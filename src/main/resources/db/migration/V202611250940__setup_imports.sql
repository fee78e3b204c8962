-- Files of the coordinator, looked through before they are posted. Rows are emptied when posted: what they said stands in
-- the lists themselves and in their history.
create table set_up_import (
    id uuid primary key,
    list text not null,                              -- the list's name, such as stations
    content text not null,                           -- JSON: header and lines as given; passwords already hashed
    rows int not null,
    state text not null constraint set_up_import_state check (state in ('PREVIEWED', 'POSTED')),
    uploaded_by text not null,
    uploaded_at timestamptz not null,
    posted_by text,
    posted_at timestamptz,
    adds int, changes int,                           -- what posting did
    version int not null default 0
);
create index set_up_import_by_time on set_up_import (uploaded_at desc);
create unique index laboratory_acceptance_once on laboratory_acceptance
    (laboratory, method, tissue, preservation, coalesce(side, ''), in_force_from);
call keep_history('laboratory_acceptance', 'id');
call keep_history('disease', 'code');
call keep_history('species', 'code');
call keep_history('region', 'code');
call keep_history('management_unit', 'code');
call keep_history('station', 'code');
call keep_history('laboratory', 'code');
call keep_history('test_method', 'code');
call keep_history('party', 'code');
call keep_history('store', 'code');
call keep_history('store_access', 'store');
call keep_history('caution', 'code');
