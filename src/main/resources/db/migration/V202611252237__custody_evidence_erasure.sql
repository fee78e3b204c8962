-- That a photograph was erased: its row, its digest and the events that hold it stay, what it showed is gone for good.
create table custody_evidence_erasure (
    evidence uuid primary key constraint custody_evidence_erasure_of references custody_evidence,
    erased_by text not null,
    erased_at timestamptz not null,
    reason text not null constraint custody_evidence_erasure_reason check (length(reason) between 1 and 500)
);
call make_append_only('custody_evidence_erasure');
comment on table custody_evidence_erasure is 'Who erased which photograph shown as evidence, when and why';
