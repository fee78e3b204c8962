-- What came of a line that was left out when its file was posted; a line without one waits, until the laboratory reports anew.
create table held_line_settlement (
    import uuid not null,
    line int not null,
    note text not null,
    settled_by text not null,
    settled_at timestamptz not null,
    primary key (import, line),
    constraint held_line_settlement_of foreign key (import, line) references result_import_row (import, line)
);
call make_append_only('held_line_settlement');
create index result_import_row_held on result_import_row (import, line) where state = 'HELD';
