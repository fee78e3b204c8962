-- Why an age class is unknown stands on the line, so that a report on a cut can say it for ever.
alter table line add column jaw_status text not null default 'UNKNOWN';   -- as the animal's
alter table line add column jaw_reason text not null default '';          -- why the jaw was not examined, in the words given
comment on column line.jaw_status is 'the jaw as the animal has it: READ, COLLECTED_TO_READ, PHOTO_TO_READ, NOT_EXAMINED';
comment on column line.jaw_reason is 'why the jaw was not examined, in the words given at intake; empty otherwise';
update line set jaw_status = a.jaw_status, jaw_reason = coalesce(a.jaw_reason, '')
  from animal a where a.kit = line.kit and line.closed_at is null;
