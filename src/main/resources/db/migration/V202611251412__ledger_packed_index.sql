-- What went into a box is told by the chains of what moved; only those events are in this index.
create index ledger_event_packed on ledger_event (((bytes::jsonb -> 'fields') ->> 'box'))
    where kind in ('PACKED', 'UNPACKED');
