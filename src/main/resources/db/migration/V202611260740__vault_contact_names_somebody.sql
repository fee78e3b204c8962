-- A row may hold a place and nobody: whoever tells people must not take it for a contact.
alter table vault.contact add column names_somebody boolean not null default true;
comment on column vault.contact.names_somebody is 'whether the sealed content has a contact, and not a place alone';
