-- Animals all of whose tissue was refused by decided identity exceptions: there is no result and there will be none.
create view unidentified_kit as
select k.kit, max(d.at) as settled_at
  from specimen_identity i
  join identity_exception e on e.code = i.code
  join identity_exception_decision d on d.exception = e.id
  join label l on l.code = i.code
  join animal a on a.kit = l.kit_bound
 cross join lateral (values (a.kit), (a.same_as)) as k (kit)
 where k.kit is not null and i.standing = 'REFUSED'
   and not exists (
       select 1
         from animal m join label ml on ml.kit_bound = m.kit join specimen t on t.code = ml.code
        where (m.kit = coalesce(a.same_as, a.kit) or m.same_as = coalesce(a.same_as, a.kit))
          and t.parent is null and not exists (
              select 1 from specimen_standing r where r.code = t.code and r.standing = 'REFUSED'))
   and not exists (
       select 1 from re_attribution r
        where k.kit in (r.from_kit, r.to_kit)
          and not exists (select 1 from re_attribution_decision y where y.re_attribution = r.id))
 group by k.kit;
comment on view unidentified_kit is 'kits of animals of which no tissue is left that is theirs, and nothing is still to be decided';
comment on column unidentified_kit.settled_at is 'the last decision';

alter table letter_wording drop constraint letter_wording_outcome;
alter table letter_wording add constraint letter_wording_outcome check (outcome in
    ('DETECTED', 'NOT_DETECTED', 'INCONCLUSIVE', 'UNSUITABLE', 'NOT_TESTED', 'NOT_ATTRIBUTABLE', 'CORRECTION'));
insert into letter_wording (outcome, edition, wording, written_by, written_at) values
    ('NOT_ATTRIBUTABLE', 1,
     'You brought us a {species} that died on {diedOn} (kit {kit}{registration}). The label on the tissue that reached the laboratory did not match our list, and it could not be shown that the tissue came from your animal. So there is no result for {disease}, and there will be none from that tissue.

No result says nothing about the animal. Please follow the current advice of {agency}: {agencyAdvice} You reach {agency} at {agencyPhone}, and us at {resultsPhone}.',
     'service', now());
