-- Animals about whom more is derived than released, and since when: what happened to their tissue from then on would tell.
create index line_embargoed on line (kit, disease) where closed_at is null and derived_outcome <> outcome;
create view embargo as
select n.kit, min(coalesce((select max(p.closed_at) from line p
                             where p.kit = n.kit and p.disease = n.disease and p.closed_at is not null
                               and p.derived_outcome = p.outcome), n.opened_at)) as since
  from line n
 where n.closed_at is null and n.derived_outcome <> n.outcome
 group by n.kit;
comment on view embargo is 'kits whose derived outcome is not released, and since when; from then on nobody without the right sees where their tissue goes';

-- packed_at is what the packer says; this is when the service was told.
alter table submission_specimen add column recorded_at timestamptz;
update submission_specimen set recorded_at = packed_at;
alter table submission_specimen alter column recorded_at set not null;
