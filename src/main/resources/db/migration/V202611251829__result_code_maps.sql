-- What a laboratory's own codes in HL7 messages mean, edition by edition, each from a day on.
create table code_map (
    laboratory text not null constraint code_map_laboratory references laboratory,
    edition int not null constraint code_map_edition check (edition > 0),
    in_force_from date not null,                     -- for messages made on that day or later (MSH-7)
    codes text not null,                             -- JSON: field (OBX-3 ...) to code^system to our word
    made_by text not null,
    made_at timestamptz not null,
    primary key (laboratory, edition)
);
call make_append_only('code_map');
alter table result_import_row add column tissue text;      -- as an HL7 message names it (SPM-4), in our word; null: not said
create index result_import_row_of_run on result_import_row (run, specimen_code) where run is not null;
