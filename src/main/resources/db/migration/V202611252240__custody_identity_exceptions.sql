-- A specimen whose label does not match at receipt, and that cannot be collected again: one person vouches for it and
-- signs, another grants or refuses. Neither row ever changes; why and on what evidence are texts of the events.
create table identity_exception (
    id uuid primary key,
    code text not null constraint identity_exception_specimen references specimen,
    problem text not null constraint identity_exception_problem check (problem in
        ('UNLABELED', 'LABEL_DISAGREES_WITH_LIST', 'LABEL_ILLEGIBLE', 'WRONG_ID', 'OTHER')),
    discrepancy uuid constraint identity_exception_discrepancy references discrepancy,
    event uuid not null constraint identity_exception_event references ledger_event,
    asked_by text not null,
    asked_at timestamptz not null,
    constraint identity_exception_asked_by unique (id, asked_by)
);
create index identity_exception_of on identity_exception (code, asked_at);
call make_append_only('identity_exception');
comment on table identity_exception is 'specimens with a label that did not match, for whose identity somebody vouches; never changed';
comment on column identity_exception.event is 'the entry on the specimen''s chain; reason and evidence are texts of that entry and can be erased';

create table identity_exception_decision (
    exception uuid primary key,
    asked_by text not null,
    granted boolean not null,
    event uuid not null constraint identity_exception_decision_event references ledger_event,
    by_actor text not null,
    at timestamptz not null,
    constraint identity_exception_decision_of foreign key (exception, asked_by) references identity_exception (id, asked_by),
    constraint identity_exception_second_person check (by_actor <> asked_by)
);
call make_append_only('identity_exception_decision');
comment on table identity_exception_decision is 'what a second person decided; never changed, never withdrawn';

-- What the exceptions asked for a specimen come to: one granted stands, whatever was refused before.
create view specimen_identity as
select e.code,
       case when bool_or(coalesce(d.granted, false)) then 'GRANTED'
            when bool_or(d.exception is null) then 'OPEN' else 'REFUSED' end as standing
  from identity_exception e left join identity_exception_decision d on d.exception = e.id
 group by e.code;
comment on view specimen_identity is 'GRANTED, OPEN or REFUSED by specimen; a specimen without exception has no row';

-- The same for what was cut from such a specimen; a piece may have a row of its own and one of its parent's.
create view specimen_standing as
with recursive family (code, standing) as (
    select code, standing from specimen_identity
    union
    select s.code, f.standing from specimen s join family f on s.parent = f.code)
select code, standing from family;
comment on view specimen_standing is 'GRANTED, OPEN or REFUSED by specimen and piece; of refused tissue nobody knows the animal';

-- Animals that are counted nowhere: a swap or an exception is not decided, or all their tissue was refused.
create view unattributed_kit as
select k.kit
  from re_attribution r cross join lateral (values (r.from_kit), (r.to_kit)) as k (kit)
 where not exists (select 1 from re_attribution_decision d where d.re_attribution = r.id)
union all
select k.kit
  from specimen_identity i
  join label l on l.code = i.code
  join animal a on a.kit = l.kit_bound
 cross join lateral (values (a.kit), (a.same_as)) as k (kit)
 where k.kit is not null
   and (i.standing = 'OPEN'
        or i.standing = 'REFUSED' and not exists (
           select 1
             from animal m join label ml on ml.kit_bound = m.kit join specimen t on t.code = ml.code
            where (m.kit = coalesce(a.same_as, a.kit) or m.same_as = coalesce(a.same_as, a.kit))
              and t.parent is null and not exists (
                  select 1 from specimen_standing r where r.code = t.code and r.standing = 'REFUSED')));
comment on view unattributed_kit is 'kits of animals that are counted nowhere until a label is settled; may name one twice';
