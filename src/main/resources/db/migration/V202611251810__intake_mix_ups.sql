-- Labels that were scanned together after labeling and were not one kit: whoever labels parts them on the spot, and what
-- was filled before may lie in the wrong jar.
create table scan_mismatch (
    kit text not null constraint scan_mismatch_kit references kit,          -- the one that most labels were of
    other text not null constraint scan_mismatch_other references kit,
    codes text not null,                             -- what was scanned, in the order scanned, separated by blanks
    by_actor text not null,
    at timestamptz not null,
    primary key (kit, other, codes)
);
call make_append_only('scan_mismatch');
comment on table scan_mismatch is 'Labels scanned together that were not of one kit';

-- That a suspicion of a mix-up was looked into and was none. A sign that comes later is shown again.
create table mix_up_set_aside (
    id uuid primary key,
    kit text not null constraint mix_up_set_aside_kit references kit,
    other text constraint mix_up_set_aside_other references kit,            -- null: the other animal was not known
    sign text not null constraint mix_up_set_aside_sign check (sign in
        ('SAME_IDENTIFIER', 'TWO_HALVES', 'SCANNED_TOGETHER', 'WRONG_ID', 'JAW_OF_ANOTHER')),
    reason text not null,
    by_actor text not null,
    at timestamptz not null
);
create index mix_up_set_aside_of on mix_up_set_aside (kit, sign);
call make_append_only('mix_up_set_aside');
comment on table mix_up_set_aside is 'Suspected mix-ups that were none, with who looked into them and why';
