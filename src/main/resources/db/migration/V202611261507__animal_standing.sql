-- Kits linked by same_as are one animal: what is true of one of them is true of all.
create index animal_by_counted_kit on animal ((coalesce(same_as, kit)));
create view animal_kit as
select coalesce(same_as, kit) as counted, kit from animal;
comment on view animal_kit is 'every kit, with the kit that counts for its animal, which may be itself';

-- Animals none of whose tissue is known to be theirs. Piece and specimen share their fate; so only whole specimens are asked.
create view refused_animal as
select distinct k.counted
  from specimen_identity i
  join label l on l.code = i.code
  join animal_kit k on k.kit = l.kit_bound
 where i.standing = 'REFUSED'
   and not exists (
       select 1
         from animal_kit m
         join label ml on ml.kit_bound = m.kit
         join specimen t on t.code = ml.code
        where m.counted = k.counted and t.parent is null
          and not exists (select 1 from specimen_standing r where r.code = t.code and r.standing = 'REFUSED'));
comment on view refused_animal is 'animals, by the kit that counts, all of whose tissue was refused by identity exceptions';

create view unsettled_animal as
select k.counted
  from re_attribution r
  join animal_kit k on k.kit in (r.from_kit, r.to_kit)
 where not exists (select 1 from re_attribution_decision d where d.re_attribution = r.id)
union all
select k.counted
  from specimen_identity i
  join label l on l.code = i.code
  join animal_kit k on k.kit = l.kit_bound
 where i.standing = 'OPEN';
comment on view unsettled_animal is 'animals, by the kit that counts, with a swap or an identity exception that nobody decided; may name one twice';

drop view unattributed_kit;
create view animal_standing as
select k.counted, k.kit,
       exists (select 1
                 from animal_kit m join label l on l.kit_bound = m.kit join specimen s on s.code = l.code
                where m.counted = k.counted) as has_specimen,
       k.counted in (select counted from unsettled_animal) or k.counted in (select counted from refused_animal)
           as not_attributable
  from animal_kit k;
comment on view animal_standing is 'what labels and links come to for each kit: whether its animal has tissue, and whether it is counted nowhere';

create or replace view unidentified_kit as
select k.kit, max(d.at) as settled_at
  from refused_animal r
  join animal_kit k on k.counted = r.counted
  join animal_kit m on m.counted = r.counted
  join label l on l.kit_bound = m.kit
  join identity_exception e on e.code = l.code
  join identity_exception_decision d on d.exception = e.id
 where not exists (select 1 from unsettled_animal u where u.counted = r.counted)
 group by k.kit;

-- A duplicate's line says DUPLICATE while its animal is in doubt; who tells its result asks the animal.
create index animal_in_doubt on animal (kit) where not_attributable;
