-- What is looked up by code for many specimens at once; without an index each look-up read the whole table.
create index specimen_preservation_of on specimen_preservation (code, since);
create index label_replacing on label (replaces) where replaces is not null;
create index submission_specimen_in_box on submission_specimen (box) where box is not null;
-- Whether a disease is detected in a unit already.
create index line_detected on line (disease, unit) where closed_at is null and outcome = 'DETECTED';
