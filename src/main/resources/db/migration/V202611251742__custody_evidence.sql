-- A photograph that shows what a custody event says: a cooler, a broken seal, a signed paper. Its digest is inside the
-- hashed bytes of the event; what it shows lies apart, so that it can be erased without touching a chain.
create table custody_evidence (
    id uuid primary key,
    digest text not null,                            -- SHA-256 of salt and the large JPEG, hex; stands in the event
    width int not null,                              -- pixels, as kept
    height int not null,
    bytes int not null,                              -- of the large copy
    added_by text not null,
    added_at timestamptz not null
);
call make_append_only('custody_evidence');
comment on table custody_evidence is 'Photographs shown as evidence of custody events, without their pixels';

-- Deleting a row erases the picture; changing one is refused.
create table custody_evidence_content (
    evidence uuid primary key constraint custody_evidence_content_of references custody_evidence,
    salt bytea not null constraint custody_evidence_content_salt check (octet_length(salt) = 32),
    large bytea not null,                            -- JPEG without metadata, longest side at most 2560 pixels
    small bytea not null                             -- JPEG without metadata, longest side at most 400 pixels
);
revoke update on custody_evidence_content from ${service};
comment on table custody_evidence_content is 'What the photographs show, with the salt of their digests';

create table custody_event_evidence (
    event uuid not null constraint custody_event_evidence_event references ledger_event,
    evidence uuid not null constraint custody_event_evidence_of references custody_evidence,
    primary key (event, evidence)
);
create index custody_event_evidence_by on custody_event_evidence (evidence);
call make_append_only('custody_event_evidence');
comment on table custody_event_evidence is 'Which event each photograph shows; the event holds its digest';
