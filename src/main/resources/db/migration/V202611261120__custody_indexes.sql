-- What a dossier, a timeline, a list or a parcel asks of these tables, whatever they have grown to.
create index discrepancy_of_code on discrepancy (code);
create index discrepancy_of_subject on discrepancy (subject) where subject is not null;
create index hand_over_newest on hand_over (offered_at desc, cast(id as text) desc);
create index hand_over_waiting_for on hand_over (offered_by) where state = 'OFFERED';
create index hand_over_waiting_of on hand_over (from_custodian) where state = 'OFFERED';
create index re_attribution_of_code on re_attribution (code);
create index re_attribution_from_kit on re_attribution (from_kit);
create index re_attribution_to_kit on re_attribution (to_kit);
-- A text kept beside an event is written once or erased; another text under its digest would be a forgery.
revoke update on ledger_secret from ${service};
