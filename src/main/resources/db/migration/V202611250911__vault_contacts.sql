-- People's data: own schema, encrypted by the application, read by role, every read audited.
create schema vault;
grant usage on schema vault to ${service};
create table vault.contact (
    kit text primary key references public.animal,
    wrapped_key bytea not null,                      -- data key wrapped by a key outside the database; erasing it erases the row
    content bytea not null,                          -- AES-GCM
    phone_index text, name_index text,               -- keyed digests for look-up
    written_by text not null,
    written_at timestamptz not null
);
create index contact_phone on vault.contact (phone_index);
create index contact_name on vault.contact (name_index);
grant select, insert, update, delete on vault.contact to ${service};
