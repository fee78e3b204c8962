create table ledger_event (
    id uuid primary key,
    chain text not null,                             -- the code whose chain it is on
    sequence int not null,
    kind text not null,
    occurred_at timestamptz not null,
    entered_at timestamptz not null,                 -- on the device
    received_at timestamptz not null,                -- by the service
    actor text not null,
    hand_over uuid,
    bytes text not null,                             -- RFC 8785; exactly what the hash covers; columns derive from it
    predecessor text not null,                       -- hash of the event before it; 64 zeros for the first
    hash text not null,                              -- SHA-256, hex
    constraint ledger_event_once unique (chain, sequence)
);
create index ledger_event_of_hand_over on ledger_event (hand_over) where hand_over is not null;
call make_append_only('ledger_event');
-- Salt and content of what is only digested in an event; erasable.
create table ledger_secret (
    event uuid not null constraint ledger_secret_event references ledger_event,
    name text not null,
    salt text not null,
    content text not null,
    primary key (event, name)
);
create table checkpoint (
    number bigint primary key,
    id uuid not null constraint checkpoint_id unique,
    made_at timestamptz not null,
    tree_size int not null,
    root text not null,
    previous text not null,
    bytes text not null,                             -- RFC 8785; what the signature covers
    signature text not null                          -- Ed25519, base64
);
call make_append_only('checkpoint');
create table checkpoint_leaf (
    checkpoint bigint not null constraint checkpoint_leaf_of references checkpoint,
    index int not null,
    event uuid not null constraint checkpoint_leaf_event unique references ledger_event,
    primary key (checkpoint, index)
);
call make_append_only('checkpoint_leaf');
