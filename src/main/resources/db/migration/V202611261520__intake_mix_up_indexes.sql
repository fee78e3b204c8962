-- Suspected mix-ups are looked for among what was recorded in a stretch of time; each sign is found by an index.
create index animal_identifier_alike on animal_identifier (upper(value), type, kit);
drop index animal_identifier_value;
create index animal_of_day on animal (station, died_on, species, sex);
create index scan_mismatch_at on scan_mismatch (at);
create index scan_mismatch_other on scan_mismatch (other, kit);
create index discrepancy_of_label on discrepancy (opened_at) where kind = 'WRONG_ID' or outcome = 'MISLABEL';
create index jaw_reading_of_another on jaw_reading (received_at)
 where contradictions like '%"J11"%' or contradictions like '%"J20"%';
