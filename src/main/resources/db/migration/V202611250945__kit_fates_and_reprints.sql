-- What became of a kit that was not used: handed back, or lost. A kit that is used after all counts as used.
create table kit_fate (
    kit text primary key constraint kit_fate_kit references kit,
    fate text not null constraint kit_fate_fate check (fate in ('LOST', 'RETURNED')),
    reason text not null,
    by_actor text not null,
    at timestamptz not null
);
call keep_history('kit_fate', 'kit');
-- One label printed again: the new print carries the old one's code, and this row is the trail between the two.
create table label_reprint (
    id uuid primary key,
    label text not null constraint label_reprint_label references label,
    stock text not null,
    reason text not null,
    printed_by text not null,
    printed_at timestamptz not null,
    print_number int not null,                       -- 2 is the first print after the block's own
    constraint label_reprint_number unique (label, print_number)
);
call make_append_only('label_reprint');
create index label_print_of_block on label_print (block, id);
