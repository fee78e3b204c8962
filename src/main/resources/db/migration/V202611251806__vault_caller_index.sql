-- By what a caller's animals are found: keyed digests of registration numbers, telephone numbers and names, the key in a file outside
-- the database. Filled at every start for whatever was indexed under another edition (other folding, another key, or never).
create table vault.caller_index (
    kit text not null constraint caller_index_kit references public.animal,
    kind text not null constraint caller_index_kind check (kind in ('REGISTRATION', 'PHONE', 'NAME')),
    digest text not null,                            -- HMAC-SHA256 of the folded value
    edition text not null,                           -- of folding and key: rows of another edition are made anew at start
    written_at timestamptz not null,                 -- an erasure replayed after a restore takes rows up to its own moment
    primary key (kit, kind, digest)
);
create index caller_index_look_up on vault.caller_index (kind, digest);
comment on table vault.caller_index is 'keyed digests by which an animal is found for a caller; erased with the contact';
grant select, insert, delete on vault.caller_index to ${service};
alter table vault.contact add column index_edition text not null default '';
comment on column vault.contact.index_edition is 'edition under which the caller index holds this contact; empty: not yet';
alter table vault.contact drop column phone_index, drop column name_index;
