-- A reason given at packing passes the rules that spoke then, not those that speak when the parcel leaves.
alter table submission_specimen add column passed text[];
comment on column submission_specimen.passed is 'names of the rules that override_reason passes; null: all that spoke (packed before they were kept)';
