-- From its first arrival at a laboratory on, where tissue goes tells what was found there: counted in, handed over, or
-- forwarded. The bytes are canonical JSON (RFC 8785), so that the one name stands in them once and without blanks.
create view laboratory_arrival as
select e.chain, e.sequence, e.received_at, substring(e.bytes from '"custodian":"([^"]*)"') as laboratory
  from ledger_event e
 where e.kind = 'RECEIVED'
    or e.kind in ('HANDOVER_ACCEPTED', 'FORWARDED')
       and exists (select 1 from laboratory l where l.code = substring(e.bytes from '"custodian":"([^"]*)"'));
comment on view laboratory_arrival is 'entries that gave tissue to a laboratory, and any count; several a chain, the first by sequence';
