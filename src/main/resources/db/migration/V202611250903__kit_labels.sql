create table kit_block (
    id uuid primary key,
    season text not null constraint kit_block_season references season,
    station text not null constraint kit_block_station references station,
    person text constraint kit_block_person references person,
    parts text[] not null,
    kits int not null constraint kit_block_kits check (kits between 1 and 5000),
    copies int not null default 1 constraint kit_block_copies check (copies between 1 and 10),
    issued_by text not null,
    issued_at timestamptz not null,
    version int not null default 0
);
create table kit (
    code text primary key,
    block uuid not null constraint kit_block_of references kit_block,
    position int not null
);
create index kit_of_block on kit (block, position);
-- Every look-up goes through kit_bound; the animal is never derived from characters.
create table label (
    code text primary key,
    part text not null,
    kit_printed text not null constraint label_kit_printed references kit,
    kit_bound text not null constraint label_kit_bound references kit,
    voided_at timestamptz,
    voided_by text,
    void_reason text,
    replaces text constraint label_replaces references label,   -- a reprint bound to the old one
    version int not null default 0
);
create index label_of_kit on label (kit_bound);
create index label_of_printed_kit on label (kit_printed);
call keep_history('label', 'code');
create table label_print (
    id bigint generated always as identity primary key,
    block uuid not null constraint label_print_block references kit_block,
    stock text not null,
    printed_by text not null,
    printed_at timestamptz not null,
    reason text
);
call make_append_only('label_print');
