-- Who says that a piece arrived; and that a result says so of one that was never counted in, kept apart from what was counted.
alter table submission_specimen add column receipt_source text
    constraint submission_specimen_receipt_source check (receipt_source in ('SCAN', 'LABORATORY_LIST'));
alter table submission_specimen add column implied_at timestamptz;
comment on column submission_specimen.receipt_source is 'how the count is known; null before it was asked, and where nothing arrived';
comment on column submission_specimen.implied_at is 'when a result first said that it arrived though nobody had counted it in; told to nobody who may not know the result';
