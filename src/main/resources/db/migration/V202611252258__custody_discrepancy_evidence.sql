-- Photographs that are evidence of a discrepancy; the entries that opened or settled it hold their digests.
create table discrepancy_evidence (
    discrepancy uuid not null constraint discrepancy_evidence_of references discrepancy,
    evidence uuid not null constraint discrepancy_evidence_photo references custody_evidence,
    primary key (discrepancy, evidence)
);
create index discrepancy_evidence_by on discrepancy_evidence (evidence);
call make_append_only('discrepancy_evidence');
comment on table discrepancy_evidence is 'Which photographs show what does not add up, or how it was settled';
