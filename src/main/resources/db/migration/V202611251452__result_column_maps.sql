-- How a laboratory's own files read: its column names, date format and words, edition by edition; the newest rules.
create table column_map (
    laboratory text not null constraint column_map_laboratory references laboratory,
    edition int not null constraint column_map_edition check (edition > 0),
    mapping text not null,                           -- JSON: columns, fixed, dateFormat, words
    made_by text not null,
    made_at timestamptz not null,
    primary key (laboratory, edition)
);
call make_append_only('column_map');
alter table result_import add column column_map int;  -- edition by which the file was read; null: its columns were ours
