-- The codes of every edition of the laboratories' code maps, one row each, as its set-up file has them.
create view code_map_code as
select m.laboratory, m.edition::text as edition, m.in_force_from, f.key as field,
       split_part(c.key, '^', 1) as code, split_part(c.key, '^', 2) as system, c.value as ours
  from code_map m, jsonb_each(m.codes::jsonb) f, jsonb_each_text(f.value) c;
comment on view code_map_code is 'Codes of the laboratories'' HL7 messages by edition; written through code_map';
comment on column code_map_code.system is 'Coding system (CWE.3), for OBX-23 the assigning authority (XON.6); empty for every one';
