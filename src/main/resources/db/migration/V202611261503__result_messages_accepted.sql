-- Numbers of messages (HL7 MSH-10) that were posted though another message of the laboratory had the number.
alter table result_import add column accepted_messages text[] not null default '{}';
comment on column result_import.accepted_messages is 'accepted by who posted it, as tests of their own';
create index result_import_row_of_message on result_import_row (run) where state = 'POSTED' and run is not null;
