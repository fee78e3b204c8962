-- What the service's role may do by default; append-only tables take UPDATE and DELETE away again.
alter default privileges in schema public grant select, insert, update, delete on tables to ${service};
alter default privileges in schema public grant usage, select on sequences to ${service};

-- Every change of a kept table, written by trigger whatever statement made it; nobody but the owner changes it.
create table history (
    id bigint generated always as identity primary key,
    table_name text not null,
    key text not null,
    old jsonb not null,
    actor text not null,
    at timestamptz not null,
    reason text
);
create index history_of_key on history (table_name, key, id);
revoke insert, update, delete on history from ${service};

create function history_write() returns trigger language plpgsql security definer set search_path = public as $$
begin
    insert into history (table_name, key, old, actor, at, reason)
    values (tg_table_name, to_jsonb(old) ->> tg_argv[0], to_jsonb(old),
            coalesce(nullif(current_setting('dentary.actor', true), ''), 'service'), clock_timestamp(),
            nullif(current_setting('dentary.reason', true), ''));
    return null;
end $$;

create function refuse_change() returns trigger language plpgsql as $$
begin
    raise exception 'table % is append-only', tg_table_name using errcode = 'insufficient_privilege';
end $$;

-- keep_history('table', 'key column'): from here on each UPDATE and DELETE leaves the old row in history.
create procedure keep_history(kept text, key_column text) language plpgsql as $$
begin
    execute format('create trigger %I after update or delete on %I for each row execute function history_write(%L)',
        kept || '_history', kept, key_column);
end $$;

-- make_append_only('table'): the service's role loses UPDATE and DELETE, and a trigger refuses them to everybody.
create procedure make_append_only(kept text) language plpgsql as $$
begin
    execute format('revoke update, delete on %I from ${service}', kept);
    execute format('create trigger %I before update or delete on %I for each row execute function refuse_change()',
        kept || '_append_only', kept);
    execute format('create trigger %I before truncate on %I for each statement execute function refuse_change()',
        kept || '_no_truncate', kept);
end $$;

create table account (
    username text primary key,
    person text,                       -- roster code; null for a shared device
    role text not null constraint account_role check (role in
        ('SAMPLER', 'LIAISON', 'EPIDEMIOLOGIST', 'COORDINATOR', 'NOTIFIER', 'AUDITOR')),
    stations text[] not null default '{}',   -- '*' serves all
    password_hash text not null,       -- bcrypt
    active boolean not null default true,
    version int not null default 0
);
call keep_history('account', 'username');

create table session (
    token_hash text primary key,       -- SHA-256 of the random token, hex
    username text not null constraint session_account references account,
    created_at timestamptz not null,
    expires_at timestamptz not null,
    ended_at timestamptz
);
create index session_by_account on session (username);

-- Digests of every accepted request, so that a replay is known for ever.
create table accepted_request (
    resource text not null,
    key text not null,
    digest text not null,
    accepted_at timestamptz not null,
    primary key (resource, key, digest)
);
call make_append_only('accepted_request');

-- Reads of what is private: who, when, what, why.
create table read_audit (
    id bigint generated always as identity primary key,
    actor text not null,
    at timestamptz not null,
    what text not null,
    key text not null,
    purpose text
);
call make_append_only('read_audit');
