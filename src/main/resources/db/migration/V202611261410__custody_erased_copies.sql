-- What is erased from an entry goes from every place that repeats it, and from the history of those rows as well.
-- The service's role may not change history; through this door it empties these columns and no others.
create function erase_from_history(of_table text, of_column text, keys text[], words text) returns bigint
    language plpgsql security definer set search_path = public as $$
declare
    emptied bigint;
begin
    if (of_table, of_column) not in (('hand_over', 'reason'), ('hand_over', 'place'), ('box', 'place'),
                                     ('discrepancy', 'evidence'), ('submission', 'carrier'), ('submission', 'waybill')) then
        raise exception 'nothing is erased from %.% in history', of_table, of_column using errcode = 'insufficient_privilege';
    end if;
    update history set old = old || jsonb_build_object(of_column, null)
     where table_name = of_table and (keys is null or key = any(keys))
       and old ->> of_column is not null and (words is null or strpos(old ->> of_column, words) > 0);
    get diagnostics emptied = row_count;
    return emptied;
end $$;
comment on function erase_from_history is 'empties a column of old rows: of those keys (null: of all), where it holds the words (null: whatever it holds)';
revoke execute on function erase_from_history from public;
grant execute on function erase_from_history to ${service};

-- A place in words is found wherever an entry says it; content is base64 and may be longer than a B-tree takes.
create index ledger_secret_place on ledger_secret using hash (content) where name = 'placeText';

-- What was erased before this was so left its copies behind.
create temporary table erased_before on commit drop as
select e.chain, e.hand_over, x.name,
       case when e.kind like 'DISCREPANCY%' then (cast(e.bytes as jsonb) -> 'fields') ->> 'discrepancy' end as discrepancy
  from ledger_secret_erasure x join ledger_event e on e.id = x.event;
update hand_over set reason = null where reason is not null
   and id in (select hand_over from erased_before where name = 'reason');
update hand_over set place = null
 where id in (select hand_over from erased_before where name = 'placeText')
   and place not in (select code from station union all select code from store union all select code from party
                     union all select code from laboratory union all select code from box);
update custody_head set place = null
 where code in (select chain from erased_before where name = 'placeText')
   and place not in (select code from station union all select code from store union all select code from party
                     union all select code from laboratory union all select code from box);
update box set place = null
 where code in (select chain from erased_before where name = 'placeText')
   and place not in (select code from station union all select code from store union all select code from party
                     union all select code from laboratory union all select code from box);
update discrepancy set evidence = null where evidence is not null
   and cast(id as text) in (select discrepancy from erased_before where name = 'evidence');
update submission set carrier = '(erased)' where carrier is not null
   and id in (select hand_over from erased_before where name = 'carrier');
update submission set waybill = '(erased)' where waybill is not null
   and id in (select hand_over from erased_before where name = 'waybill');
select erase_from_history('hand_over', 'reason', array_agg(cast(hand_over as text)), null)
  from erased_before where name = 'reason' having count(hand_over) > 0;
select erase_from_history('submission', 'carrier', array_agg(cast(hand_over as text)), null)
  from erased_before where name = 'carrier' having count(hand_over) > 0;
select erase_from_history('submission', 'waybill', array_agg(cast(hand_over as text)), null)
  from erased_before where name = 'waybill' having count(hand_over) > 0;
select erase_from_history('hand_over', 'place', array_agg(cast(hand_over as text)), null),
       erase_from_history('box', 'place', array_agg(chain), null)
  from erased_before where name = 'placeText' having count(*) > 0;
select erase_from_history('discrepancy', 'evidence', array_agg(discrepancy), null)
  from erased_before where name = 'evidence' having count(discrepancy) > 0;
