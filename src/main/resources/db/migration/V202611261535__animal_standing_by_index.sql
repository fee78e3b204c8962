-- What labels and links come to, worked out for the animals asked about alone: each look-up below is by an index, however
-- many swaps and exceptions there have been.
drop view unidentified_kit;
drop view animal_standing;
drop view unsettled_animal;
drop view refused_animal;

create view animal_label as
select k.counted, k.kit,
       t.tissue > 0 as has_specimen,
       exists (select 1
                 from animal_kit m join re_attribution r on r.from_kit = m.kit or r.to_kit = m.kit
                where m.counted = k.counted
                  and not exists (select 1 from re_attribution_decision d where d.re_attribution = r.id)) as swap_open,
       coalesce(t.exception_open, false) as exception_open,
       coalesce(t.refused, false) and t.known = 0 as all_refused,
       t.settled_at
  from animal_kit k
 cross join lateral (
       -- A piece shares its specimen's fate, so whole specimens alone tell whether any tissue is known to be the animal's.
       select count(*) as tissue,
              count(*) filter (where s.parent is null and i.standing is distinct from 'REFUSED') as known,
              bool_or(i.standing = 'REFUSED') as refused,
              bool_or(i.standing = 'OPEN') as exception_open,
              max(i.settled_at) as settled_at
         from animal_kit m
         join label l on l.kit_bound = m.kit
         join specimen s on s.code = l.code
         left join lateral (
              -- As in specimen_identity.
              select case when bool_or(coalesce(d.granted, false)) then 'GRANTED'
                          when bool_or(d.exception is null) then 'OPEN' else 'REFUSED' end as standing,
                     max(d.at) as settled_at
                from identity_exception e left join identity_exception_decision d on d.exception = e.id
               where e.code = s.code having count(*) > 0) i on true
        where m.counted = k.counted) t;
comment on view animal_label is 'for each kit what is recorded of the labels of its animal, under whichever of its kits; ask for kits by name';
comment on column animal_label.all_refused is 'an identity exception was refused for all of its tissue';
comment on column animal_label.settled_at is 'when the last identity exception was decided';

create view animal_standing as
select counted, kit, has_specimen, swap_open or exception_open or all_refused as not_attributable from animal_label;
comment on view animal_standing is 'for each kit whether its animal has tissue, and whether it is counted nowhere; ask for kits by name';

create view unidentified_kit as
select l.kit, l.settled_at
  from animal a join animal_label l on l.kit = a.kit
 where a.not_attributable and l.all_refused and not l.swap_open and not l.exception_open;
comment on view unidentified_kit is 'kits of animals of which no tissue is left that is theirs, and nothing is still to be decided';
comment on column unidentified_kit.settled_at is 'the last decision';
